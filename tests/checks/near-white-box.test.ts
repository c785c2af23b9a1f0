import { converter, differenceCiede2000 } from 'culori';
import { describe, expect, it } from 'vitest';
import type { Raster } from '../../src/raster/raster.ts';
import { CLEAR, GREEN, paintRaster, type Rgba, seededNumbers } from '../pictures.ts';
import { DISC, findingsOf, outcomesOf } from './jobs.ts';

const gray = (code: number): Rgba => [code, code, code, 255];

/** A disc of 100 px across in the middle of a box of 200 x 200 px. */
function boxed(ground: (x: number, y: number) => Rgba): Raster {
  return paintRaster(200, 200, (x, y) => (Math.hypot(x - 99.5, y - 99.5) < 50 ? GREEN : ground(x, y)));
}

/** 60 mm wide on a plate of 100 mm: its edges lie on the blank. */
const judge = (raster: Raster, widthMm = 60) =>
  findingsOf(outcomesOf(raster, { widthMm }), 'near-white-box').map(
    ({ code, severity }) => `${code}:${severity}`,
  );

describe('near-white-box', () => {
  it.each([
    [255, []],
    [254, []],
    [253, []],
    [252, ['near-white:advice']],
    [250, ['near-white:advice']],
    [240, ['near-white:advice']],
    [230, ['flat-box:advice']],
    [0, ['flat-box:advice']],
  ])('a ground of gray %d', (code, codes) => {
    expect(judge(boxed(() => gray(code)))).toEqual(codes);
  });

  it('measures the step as another library does', () => {
    const [finding] = findingsOf(
      outcomesOf(
        boxed(() => gray(250)),
        { widthMm: 60 },
      ),
      'near-white-box',
    );
    const other = { mode: 'rgb', r: 250 / 255, g: 250 / 255, b: 250 / 255 } as const;
    const white = { mode: 'rgb', r: 1, g: 1, b: 1 } as const;
    const lab = converter('lab');
    expect(finding!.facts.lightnessStep).toBeCloseTo(100 - lab(other).l, 2);
    expect(finding!.facts.deltaE00).toBeCloseTo(differenceCiede2000()(lab(other), lab(white)), 1);
    // 60 x 60 mm less a disc of 30 mm: 3600 - 225 pi; 0.3 mm pixels round it.
    expect(Math.abs(Number(finding!.facts.areaMm2) - (3600 - 225 * Math.PI))).toBeLessThan(5);
    expect(finding!.place!.mm).toMatchObject({ x: 20, y: 20 });
  });

  it('says the same of the same art drawn finer: what it measures on pixels is what is printed', () => {
    const drawn = (fold: number, ground: number, seed: number) => {
      const next = seededNumbers(seed);
      const side = 200 * fold;
      // Grain of a pixel, which a print evens out where pixels are finer than it.
      return paintRaster(side, side, (x, y) =>
        Math.hypot(x + 0.5 - side / 2, y + 0.5 - side / 2) < side / 4
          ? GREEN
          : gray(ground + Math.floor(next() * 5) - 2),
      );
    };
    for (const [ground, code] of [
      [250, 'near-white'],
      [200, 'flat-box'],
    ] as const)
      for (const fold of [1, 2, 3, 4]) {
        const found = findingsOf(outcomesOf(drawn(fold, ground, fold), { widthMm: 60 }), 'near-white-box');
        expect(found.map((finding) => finding.code)).toEqual([code]);
        expect(Math.abs(Number(found[0]!.facts.areaMm2) - (3600 - 225 * Math.PI))).toBeLessThan(5);
      }
  });

  it('finds it through the noise of JPEG, with a subject that reaches a side, and with round corners', () => {
    const next = seededNumbers(7);
    const noisy = boxed(() => gray(248 + Math.floor(next() * 7) - 3));
    expect(judge(noisy)).toEqual(['near-white:advice']);
    const standing = paintRaster(200, 200, (x, y) => (x > 70 && x < 130 && y > 60 ? GREEN : gray(248)));
    expect(judge(standing)).toEqual(['near-white:advice']);
    const round = boxed((x, y) => (Math.min(x, 199 - x) + Math.min(y, 199 - y) < 8 ? CLEAR : gray(248)));
    expect(judge(round)).toEqual(['near-white:advice']);
  });

  it('lies in wait for 25 mm2 and no less', () => {
    // 10 x 10 px of which 36 are the subject: 64 pixels of ground.
    const small = paintRaster(10, 10, (x, y) => (Math.min(x, y, 9 - x, 9 - y) < 2 ? gray(248) : GREEN));
    expect(judge(small, 6.25)).toEqual(['near-white:advice']);
    expect(judge(small, 6.24)).toEqual([]);
  });

  it('leaves designs alone: grounds to the rim of the blank, gradients, one colour, clear and round grounds', () => {
    expect(
      judge(
        boxed(() => [200, 30, 30, 255]),
        106,
      ),
    ).toEqual([]);
    // It covers the blank, so nothing ends on it; the tone is still told.
    expect(
      judge(
        boxed(() => gray(248)),
        106,
      ),
    ).toEqual(['near-white:advice']);
    expect(judge(boxed((x) => gray(150 + Math.floor(x / 2))))).toEqual([]);
    expect(judge(paintRaster(50, 50, () => gray(248)))).toEqual([]);
    expect(judge(boxed(() => CLEAR))).toEqual([]);
    expect(judge(boxed((x, y) => (Math.hypot(x - 99.5, y - 99.5) < 100 ? gray(248) : CLEAR)))).toEqual([]);
    // A sticker's border of one colour round the cut-out, haze and a checkerboard of single pixels.
    expect(judge(boxed(() => [0, 0, 0, 5]))).toEqual([]);
    expect(judge(paintRaster(60, 60, (x, y) => gray((x + y) % 2 === 0 ? 0 : 255)))).toEqual([]);
  });

  it('has sensible answers for the smallest art', () => {
    expect(judge(paintRaster(1, 1, () => gray(248)))).toEqual([]);
    expect(
      judge(
        paintRaster(1, 300, () => gray(248)),
        1,
      ),
    ).toEqual([]);
    const nothing = outcomesOf(paintRaster(4, 4, () => CLEAR)).find(
      ({ check }) => check === 'near-white-box',
    );
    expect(nothing?.status).toBe('skipped');
  });

  it('sees a box on a round blank, where the art stands inside', () => {
    const found = findingsOf(
      outcomesOf(
        boxed(() => gray(248)),
        { blank: DISC, fit: 'inside' },
      ),
      'near-white-box',
    );
    expect(found.map(({ code }) => code)).toEqual(['near-white']);
  });

  it('judges 16 bits and gray alike', () => {
    const eight = boxed(() => gray(248));
    const deep: Raster = { ...eight, depth: 16, data: Uint16Array.from(eight.data, (v) => v * 257) };
    expect(judge(deep)).toEqual(['near-white:advice']);
    const single = Uint8Array.from({ length: 40_000 }, (_, i) => (eight.data[4 * i] === 248 ? 248 : 90));
    expect(
      judge({ widthPx: 200, heightPx: 200, model: 'gray', hasAlpha: false, depth: 8, data: single }),
    ).toEqual(['near-white:advice']);
  });
});
