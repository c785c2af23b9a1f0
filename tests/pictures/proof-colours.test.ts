import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { decodeSrgb, encodeSrgb } from '../../src/colour/srgb.ts';
import { proofTableOf } from '../../src/conditions/colour-tables.ts';
import { loadCondition } from '../../src/conditions/load-condition.ts';
import { SRGB_PROFILE } from '../../src/icc/srgb-profile.ts';
import { makeSrgbTransform } from '../../src/icc/srgb-transform.ts';
import { deepen, paintRgb } from '../checks/colour-jobs.ts';
import { PLATE } from '../checks/jobs.ts';
import { wideProfile } from '../checks/wide-profile.ts';
import { makeGenerator } from '../icc/random-colours.ts';
import { CLEAR, paintRaster } from '../pictures.ts';
import { askWitness, requireWitness } from '../witness.ts';
import { drawProofOf } from './proof-jobs.ts';

const { profile } = await loadCondition('coated-reference');
const table = proofTableOf(profile, SRGB_PROFILE);
type Rgb = readonly [number, number, number];

/** What the condition makes of a colour on a base, by exact evaluation, in 8-bit codes. */
const printed = (colour: Rgb, base: Rgb = [255, 255, 255]): number[] =>
  table
    .convert(colour.map((code) => code / 255))
    .map((value, i) => encodeSrgb(decodeSrgb(value) * decodeSrgb(base[i]! / 255)) * 255);

function expectNear(pixel: readonly number[], codes: readonly number[], within = 1): void {
  for (const [i, code] of codes.entries()) expect(Math.abs(pixel[i]! - code)).toBeLessThanOrEqual(within);
  expect(pixel[3]).toBe(255);
}

const COLOURS: readonly Rgb[] = [
  [255, 0, 0],
  [0, 255, 0],
  [0, 0, 255],
  [0, 255, 255],
  [0, 0, 0],
  [128, 128, 128],
  [120, 95, 75],
  [250, 240, 10],
  [13, 27, 42],
  [200, 220, 180],
];
/** Columns of the colours, 10 mm wide each on a plate of 100 mm. */
const columns = paintRgb(100, 100, (x) => COLOURS[Math.floor(x / 10)]!);
const placed = { widthMm: 100, heightMm: 100 };

describe('colours of a proof', () => {
  it('are what the condition makes of those of the art, within one level', async () => {
    const proof = await drawProofOf(columns, placed);
    for (const [i, colour] of COLOURS.entries()) expectNear(proof.at(10 * i + 5, 50), printed(colour));
  });

  it('are the same from 16 bits', async () => {
    const proof = await drawProofOf(deepen(columns), placed);
    for (const [i, colour] of COLOURS.entries()) expectNear(proof.at(10 * i + 5, 50), printed(colour));
  });

  it('of wide art are those of the print-ready file, which sRGB clips before it is printed', async () => {
    const wide = wideProfile();
    const ownColours = { name: 'wide', profile: wide, toSrgb: makeSrgbTransform(wide) };
    const proof = await drawProofOf(
      paintRgb(50, 50, () => [0, 255, 0]),
      { changes: { ownColours } },
    );
    const clipped = new Uint8Array(3);
    ownColours.toSrgb.convert8(Uint8Array.of(0, 255, 0), clipped, 1);
    expectNear(proof.at(50, 50), printed([...clipped] as unknown as Rgb));
  });

  it('show the base where the art is white or clear: on white paper exactly, and on wood and slate', async () => {
    const art = paintRaster(90, 90, (x) =>
      x < 30 ? [255, 255, 255, 255] : x < 60 ? CLEAR : [0, 90, 40, 255],
    );
    for (const base of [
      [255, 255, 255],
      [222, 194, 160],
      [85, 98, 112],
    ] as const) {
      const hex = `#${base.map((code) => code.toString(16).padStart(2, '0')).join('')}`;
      const blank = { ...PLATE, baseColour: hex };
      const proof = await drawProofOf(art, { blank, ...placed });
      expect(proof.at(15, 50)).toEqual([...base, 255]);
      expect(proof.at(50, 50)).toEqual([...base, 255]);
      expectNear(proof.at(85, 50), printed([0, 90, 40], base));
    }
  });

  it('treat the background as printed, and thin dye as over white paper', async () => {
    const art = paintRaster(90, 90, (x) => (x > 0 && x < 45 ? CLEAR : [255, 0, 0, 128]));
    const background = { r: 20, g: 60, b: 200, alpha: 1 } as const;
    expectNear((await drawProofOf(art, { background, ...placed })).at(20, 50), printed([20, 60, 200]));
    const clear = { r: 0, g: 0, b: 0, alpha: 0 } as const;
    const thin = await drawProofOf(art, { background: clear, ...placed });
    expect(thin.at(20, 50)).toEqual([255, 255, 255, 255]);
    expectNear(thin.at(80, 50), printed([255, 127, 127]));
  });

  it.each(['first', 'second'] as const)('are seen from the front on the %s surface', async (surface) => {
    const proof = await drawProofOf(columns, { ...placed, surface });
    expectNear(proof.at(5, 50), printed(COLOURS[0]!));
    expectNear(proof.at(95, 50), printed(COLOURS.at(-1)!));
  });

  it('no channel adds light to a base', async () => {
    const blank = { ...PLATE, baseColour: '#3c4048' };
    const proof = await drawProofOf(columns, { blank, ...placed });
    for (let x = 5; x < 100; x += 10)
      for (const [i, code] of [0x3c, 0x40, 0x48].entries())
        expect(proof.at(x, 50)[i]).toBeLessThanOrEqual(code);
  });
});

describe('the table of a proof', () => {
  const next = makeGenerator(5);
  const pixels = Uint8Array.from({ length: 30_000 }, () => next() >>> 24);

  it('comes within one level of exact evaluation, but for few samples at the border of sRGB', () => {
    const interpolated = new Uint16Array(pixels.length);
    table.convert8(pixels, interpolated, pixels.length / 3);
    const off: number[] = [];
    for (let at = 0; at < pixels.length; at += 3) {
      const exact = table.convert([...pixels.subarray(at, at + 3)].map((code) => code / 255));
      for (const [i, value] of exact.entries()) off.push(Math.abs(value * 255 - interpolated[at + i]! / 257));
    }
    // Where a channel is clipped at 0 the table bends between its nodes.
    expect(off.filter((levels) => levels > 1).length / off.length).toBeLessThan(0.003);
    expect(Math.max(...off)).toBeLessThan(6);
  });

  it('agrees with the soft proof of Little CMS', (context) => {
    requireWitness(context, 'transicc');
    const icc = readFileSync(new URL('../../seeds/conditions/coated-reference.icc', import.meta.url));
    const colours = Array.from({ length: 1000 }, (_, i) => [...pixels.subarray(3 * i, 3 * i + 3)]);
    const args = ['-n', '-i*sRGB', '-o*sRGB', '-pcondition.icc', '-t1', '-m1', '-b', '-c0'];
    const { stdout } = askWitness(
      'transicc',
      args,
      { 'condition.icc': icc },
      `${colours.map((colour) => colour.join(' ')).join('\n')}\n`,
    );
    const theirs = stdout
      .toString()
      .trim()
      .split('\n')
      .map((line) => line.trim().split(/\s+/).map(Number));
    expect(theirs).toHaveLength(colours.length);
    const off = colours.flatMap((colour, i) =>
      printed(colour as unknown as Rgb).map((code, k) => Math.abs(code - theirs[i]![k]!)),
    );
    off.sort((a, b) => a - b);
    // The two engines interpolate four inks differently (simplex here, two tetrahedra there), between nodes far apart.
    expect(off.reduce((sum, levels) => sum + levels, 0) / off.length).toBeLessThan(0.7);
    expect(off[Math.floor(off.length * 0.95)]).toBeLessThan(3);
  });
});
