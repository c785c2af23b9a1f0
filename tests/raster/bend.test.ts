import { describe, expect, it } from 'vitest';
import { type Bend, bendRaster } from '../../src/raster/bend.ts';
import { createRaster, type Raster } from '../../src/raster/raster.ts';
import { paintRaster, type Rgba } from '../pictures.ts';
import { askWitness, requireWitness } from '../witness.ts';

/** 400 x 200 on radii of 700 and 500, so an angle of 400 / 600 rad; box and apex by hand, the apex on whole pixels. */
const BELOW: Bend = {
  widthPx: 460,
  heightPx: 240,
  apexPx: { x: 230, y: 705 },
  middleRadiusPx: 600,
  opens: 'below',
};
const smooth = (x: number, y: number): Rgba => [
  Math.round(127 + 90 * Math.sin(x / 37)),
  Math.round(127 + 90 * Math.cos(y / 29)),
  Math.round((x + y) / 3),
  255,
];

function toPgmInput({ widthPx, heightPx, data }: Raster): Uint8Array {
  const head = Buffer.from(
    `P7\nWIDTH ${widthPx}\nHEIGHT ${heightPx}\nDEPTH 4\nMAXVAL 255\nTUPLTYPE RGB_ALPHA\nENDHDR\n`,
    'latin1',
  );
  return Buffer.concat([head, data as Uint8Array]);
}

const at = ({ widthPx, data }: Raster, x: number, y: number) =>
  Array.from(data.subarray((y * widthPx + x) * 4, (y * widthPx + x) * 4 + 4));

describe('bending', () => {
  it('agrees with the arc distortion of ImageMagick within 2 levels on smooth art', (context) => {
    requireWitness(context, 'convert');
    const raster = paintRaster(400, 200, smooth);
    const degrees = (400 / 600) * (180 / Math.PI);
    const answer = askWitness(
      'convert',
      [
        'art.pam',
        ...['-virtual-pixel', 'transparent', '-define', 'distort:viewport=460x240-230-705'],
        ...['-distort', 'Arc', `${degrees} 0 700 500`, '+repage', '-depth', '8', 'rgba:-'],
      ],
      { 'art.pam': toPgmInput(raster) },
    );
    const ours = bendRaster(raster, BELOW);
    expect(answer.stdout.length).toBe(ours.data.length);
    let [compared, worst] = [0, 0];
    for (let pixel = 0; pixel < ours.data.length; pixel += 4) {
      // The witness lets its rim fade by its own filter.
      if (ours.data[pixel + 3] !== 255 || answer.stdout[pixel + 3] !== 255) continue;
      compared += 1;
      for (let i = 0; i < 3; i += 1)
        worst = Math.max(worst, Math.abs(ours.data[pixel + i]! - answer.stdout[pixel + i]!));
    }
    // 400 x 200 pixels keep their area where they are neither stretched nor squeezed on average.
    expect(compared).toBeGreaterThan(76_000);
    expect(worst).toBeLessThanOrEqual(2);
  });

  it('opens the other way for a body that is wider below: the same turned upside down', () => {
    const raster = paintRaster(400, 200, smooth);
    const upsideDown = paintRaster(400, 200, (x, y) => smooth(x, 199 - y));
    const below = bendRaster(raster, BELOW);
    const above = bendRaster(upsideDown, { ...BELOW, apexPx: { x: 230, y: 240 - 705 }, opens: 'above' });
    for (const [x, y] of [
      [230, 20],
      [100, 60],
      [400, 150],
      [60, 90],
    ] as const)
      expect(at(above, x, 239 - y)).toEqual(at(below, x, y));
  });

  it.each([
    ['rgb without alpha', 'rgb', false, 8],
    ['16-bit rgb', 'rgb', true, 16],
    ['gray', 'gray', true, 8],
    ['16-bit cmyk', 'cmyk', true, 16],
  ] as const)('keeps one colour exactly, to its rim: %s', (_, model, hasAlpha, depth) => {
    const raster = createRaster({ widthPx: 400, heightPx: 200, model, hasAlpha, depth });
    const full = depth === 8 ? 255 : 65535;
    raster.data.fill(full);
    const step = { gray: 1, rgb: 3, cmyk: 4 }[model] + (hasAlpha ? 1 : 0);
    for (let i = 0; i < raster.data.length; i += step) raster.data[i] = 77;
    const bent = bendRaster(raster, BELOW);
    const channels = { gray: 1, rgb: 3, cmyk: 4 }[model] + 1;
    let seen = 0;
    for (let i = 0; i < bent.data.length; i += channels) {
      if (bent.data[i + channels - 1] === 0) continue;
      seen += 1;
      expect(bent.data[i]).toBe(77);
      expect(bent.data[i + channels - 1]).toBe(full);
    }
    // The area of the sector: half the angle times the difference of the squared radii.
    const area = ((400 / 600) * (700 ** 2 - 500 ** 2)) / 2;
    expect(Math.abs(seen / area - 1)).toBeLessThan(0.003);
  });

  it('does not let the colour of clear pixels bleed in', () => {
    const half = paintRaster(400, 200, (x) => (x < 200 ? [0, 200, 0, 255] : [255, 0, 0, 0]));
    const bent = bendRaster(half, BELOW);
    for (let i = 0; i < bent.data.length; i += 4)
      if (bent.data[i + 3]! > 0) expect([bent.data[i], bent.data[i + 1]]).toEqual([0, 200]);
  });
});
