import { describe, expect, it } from 'vitest';
import type { Raster } from '../../src/raster/raster.ts';
import { discOf, holed } from '../cut-out-art.ts';
import { CLEAR, GREEN, paintRaster, type Rgba } from '../pictures.ts';
import { deepen } from './colour-jobs.ts';
import { findingsOf, outcomesOf, PLATE } from './jobs.ts';

const judge = (raster: Raster, widthMm = 60, blank = PLATE) =>
  findingsOf(outcomesOf(raster, { widthMm, blank }), 'hollow-alpha');
const codesOf = (raster: Raster, widthMm = 60, blank = PLATE) =>
  judge(raster, widthMm, blank).map(({ code, severity }) => `${code}:${severity}`);
const BLACK = [0, 0, 0] as const;

describe('hollow-alpha: almost opaque', () => {
  it.each([
    [255, []],
    [252, []],
    // 4 of 255 in black are 1.1 L* (CIE 15:2018), 3 are 0.8.
    [251, ['almost-opaque:advice']],
    [247, ['almost-opaque:advice']],
    [243, ['almost-opaque:advice']],
    [242, []],
    [120, []],
  ])('a black disc of alpha %d on white', (alpha, codes) => {
    expect(codesOf(discOf(BLACK, alpha), 50)).toEqual(codes);
  });

  it('measures its area and its alpha', () => {
    const [finding] = judge(discOf(BLACK, 247), 50);
    expect(Math.abs(Number(finding!.facts.areaMm2) - Math.PI * 25 ** 2)).toBeLessThan(30);
    expect(finding!.facts.alpha).toBeCloseTo(247, 1);
    expect(finding!.place!.mm.width).toBeCloseTo(50, 0);
  });

  it('tells what the base does with it: pale art and a black base hide it', () => {
    expect(codesOf(discOf([250, 250, 245], 247), 50)).toEqual([]);
    expect(codesOf(discOf(BLACK, 247), 50, { ...PLATE, baseColour: '#000000' })).toEqual([]);
  });

  it('leaves what fades from opaque to clear, small parts, and 16 bits of full alpha', () => {
    const fading = paintRaster(300, 300, (_, y): Rgba => [0, 0, 0, Math.round(255 * (1 - y / 299))]);
    expect(codesOf(fading)).toEqual([]);
    const part = (side: number) =>
      paintRaster(300, 300, (x, y): Rgba => [0, 0, 0, x < side && y < side ? 247 : 255]);
    expect(codesOf(part(24))).toEqual([]);
    expect(codesOf(part(25))).toEqual(['almost-opaque:advice']);
    expect(codesOf(deepen(discOf(BLACK, 255)), 50)).toEqual([]);
    expect(codesOf(deepen(discOf(BLACK, 247)), 50)).toEqual(['almost-opaque:advice']);
  });
});

describe('hollow-alpha: ragged holes', () => {
  it.each([
    ['clean', []],
    ['soft', []],
    ['ragged', ['ragged-holes:advice']],
  ] as const)('a hole of 8 mm with a %s rim', (rim, codes) => {
    expect(codesOf(holed(8, rim, 1.2))).toEqual(codes);
  });

  it('says how many, how large and where', () => {
    const [finding] = judge(holed(8, 'ragged', 1.2));
    const { x, y, width, height } = finding!.place!.mm;
    expect(finding!.facts.count).toBe(1);
    expect(Math.hypot(x + width / 2 - 50, y + height / 2 - 50)).toBeLessThan(0.6);
    expect(width).toBeGreaterThan(8);
    expect(width).toBeLessThan(10.6);
  });

  it('lets lace, rings and checkerboards pass, and what is open to the outside', () => {
    const lace = paintRaster(300, 300, (x, y): Rgba => {
      const far = Math.hypot((x % 20) - 9.5, (y % 20) - 9.5);
      return [9, 9, 9, Math.round(255 * Math.min(1, Math.max(0, far - 7)))];
    });
    expect(codesOf(lace)).toEqual([]);
    expect(codesOf(paintRaster(60, 60, (x, y) => ((x + y) % 2 === 0 ? GREEN : CLEAR)))).toEqual([]);
    const open = holed(8, 'ragged', 1.2);
    for (let x = 150; x < 300; x += 1) open.data[(150 * 300 + x) * 4 + 3] = 0;
    expect(codesOf(open)).toEqual([]);
  });
});
