import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { channelsOf, createRaster, type Raster } from '../../src/raster/raster.ts';
import { surveyRaster } from '../../src/raster/survey-raster.ts';
import { blockRaster, CLEAR, paintRaster } from '../pictures.ts';

/** The same facts, found the slow and plain way: one pixel after the other, nothing shared with the code. */
function surveySlowly(raster: Raster) {
  const step = channelsOf(raster);
  const full = raster.depth === 8 ? 255 : 65535;
  const visible: [number, number][] = [];
  const half: [number, number][] = [];
  const inked: [number, number][] = [];
  const histogram = new Array<number>(256).fill(0);
  const census = new Map<number, number>();
  let white = 0;
  for (let y = 0; y < raster.heightPx; y += 1) {
    for (let x = 0; x < raster.widthPx; x += 1) {
      const pixel = [
        ...raster.data.subarray((y * raster.widthPx + x) * step, (y * raster.widthPx + x + 1) * step),
      ];
      const alpha = raster.hasAlpha ? pixel.pop()! : full;
      histogram[alpha === 0 ? 0 : Math.max(1, Math.floor((alpha * 256) / (full + 1)))]! += 1;
      if (alpha === 0) continue;
      visible.push([x, y]);
      if (alpha * 2 >= full) half.push([x, y]);
      const rgb = pixel.length === 1 ? [pixel[0]!, pixel[0]!, pixel[0]!] : pixel;
      const [r, g, b] = rgb.map((v) => Math.floor((v * 32) / (full + 1))) as [number, number, number];
      census.set(r * 1024 + g * 32 + b, (census.get(r * 1024 + g * 32 + b) ?? 0) + 1);
      if (rgb.every((v) => v === full)) white += 1;
      else inked.push([x, y]);
    }
  }
  const box = (pixels: [number, number][]) => {
    if (pixels.length === 0) return null;
    const xs = pixels.map(([x]) => x);
    const ys = pixels.map(([, y]) => y);
    const [left, top] = [Math.min(...xs), Math.min(...ys)];
    return { x: left, y: top, width: Math.max(...xs) - left + 1, height: Math.max(...ys) - top + 1 };
  };
  const on = (test: (x: number, y: number) => boolean) => visible.filter(([x, y]) => test(x, y)).length;
  return {
    contentBoxPx: box(visible),
    percent50: box(half),
    inkBoxPx: box(inked),
    histogram,
    census: [...census].sort(([a], [b]) => a - b),
    visiblePixels: visible.length,
    pureWhitePixels: white,
    border: [
      on((_, y) => y === 0),
      on((x) => x === raster.widthPx - 1),
      on((_, y) => y === raster.heightPx - 1),
      on((x) => x === 0),
    ],
  };
}

const anyRaster = fc
  .record({
    widthPx: fc.integer({ min: 1, max: 12 }),
    heightPx: fc.integer({ min: 1, max: 12 }),
    model: fc.constantFrom('gray' as const, 'rgb' as const),
    hasAlpha: fc.boolean(),
    depth: fc.constantFrom(8 as const, 16 as const),
    seed: fc.integer(),
  })
  .map(({ seed, ...shape }) => {
    const raster = createRaster(shape);
    const values =
      raster.depth === 8 ? [0, 1, 5, 127, 128, 254, 255] : [0, 1, 255, 1310, 32767, 32768, 65535];
    let state = seed >>> 0;
    for (let i = 0; i < raster.data.length; i += 1) {
      state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
      raster.data[i] = values[(state >>> 16) % values.length]!;
    }
    return raster;
  });

describe('surveyRaster', () => {
  it('a block pasted at a known place is found there, every model, depth and border', () => {
    const survey = surveyRaster(blockRaster([60, 50], { x: 10, y: 20, width: 30, height: 25 }));
    expect(survey.contentBoxPx).toEqual({ x: 10, y: 20, width: 30, height: 25 });
    expect(survey.visiblePixels).toBe(750);
    expect(survey.borderPixels).toEqual({ top: 0, right: 0, bottom: 0, left: 0 });
    expect(new Set(survey.hullPx.map(({ x, y }) => `${x},${y}`))).toEqual(
      new Set(['10,20', '40,20', '40,45', '10,45']),
    );
  });

  it('agrees with counting pixel by pixel', () => {
    fc.assert(
      fc.property(anyRaster, (raster) => {
        const slow = surveySlowly(raster);
        const { alphaHistogram, census, borderPixels, boxAtAlphaPx, ...fast } = surveyRaster(raster);
        expect(fast.contentBoxPx).toEqual(slow.contentBoxPx);
        expect(boxAtAlphaPx.percent50).toEqual(slow.percent50);
        expect(fast.inkBoxPx).toEqual(slow.inkBoxPx);
        expect(fast.visiblePixels).toBe(slow.visiblePixels);
        expect(fast.pureWhitePixels).toBe(slow.pureWhitePixels);
        expect([...alphaHistogram]).toEqual(slow.histogram);
        expect([...census.entries()].filter(([, count]) => count > 0)).toEqual(slow.census);
        expect([borderPixels.top, borderPixels.right, borderPixels.bottom, borderPixels.left]).toEqual(
          slow.border,
        );
      }),
      { numRuns: 400, seed: 11 },
    );
  });

  it('boxes at 2, 10 and 50 % of alpha, each at its own limit', () => {
    const alphas = [1, 5, 6, 25, 26, 127, 128, 255];
    const survey = surveyRaster(paintRaster(8, 1, (x) => [9, 9, 9, alphas[x]!]));
    expect(survey.contentBoxPx?.x).toBe(0);
    expect(survey.boxAtAlphaPx.percent2?.x).toBe(2);
    expect(survey.boxAtAlphaPx.percent10?.x).toBe(4);
    expect(survey.boxAtAlphaPx.percent50?.x).toBe(6);
  });

  it('alpha 1 of 65535 is visible', () => {
    const raster = createRaster({ widthPx: 3, heightPx: 3, model: 'rgb', hasAlpha: true, depth: 16 });
    raster.data[4 * 4 + 3] = 1;
    const survey = surveyRaster(raster);
    expect(survey.contentBoxPx).toEqual({ x: 1, y: 1, width: 1, height: 1 });
    expect(survey.alphaHistogram[1]).toBe(1);
  });

  it('nothing visible gives null boxes and an empty hull', () => {
    const survey = surveyRaster(paintRaster(4, 4, () => CLEAR));
    expect([
      survey.contentBoxPx,
      survey.boxAtAlphaPx.percent50,
      survey.hullPx.length,
      survey.alphaHistogram[0],
    ]).toEqual([null, null, 0, 16]);
  });

  it('a view into a larger buffer that is not aligned is read all the same', () => {
    const source = blockRaster([5, 5], { x: 1, y: 2, width: 3, height: 1 });
    const buffer = new Uint8Array(source.data.length + 1);
    buffer.set(source.data, 1);
    expect(surveyRaster({ ...source, data: buffer.subarray(1) })).toEqual(surveyRaster(source));
  });
});
