import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { enlargeRaster } from '../../src/raster/enlarge.ts';
import { createRaster, fullScaleOf } from '../../src/raster/raster.ts';
import { anyRaster, pixelAt, rasterOf } from './any-raster.ts';

describe('enlargeRaster', () => {
  it('reproduces a parabola, as the kernel is proved to (Keys 1981, section IV), at the true places', () => {
    // 16 bits, so that rounding hides no shift: a shift of 0.01 px would be 20 steps.
    const value = (place: number) => 100 + 40 * place + 2.5 * place * place;
    const source = createRaster({ widthPx: 100, heightPx: 1, model: 'gray', hasAlpha: false, depth: 16 });
    for (let x = 0; x < 100; x++) source.data[x] = value(x + 0.5);
    for (const widthPx of [100, 101, 137, 200, 399, 1000]) {
      const scale = widthPx / 100;
      const { data } = enlargeRaster(source, widthPx, 3);
      // Rounded once in the source and once here; within two source pixels of the ends the border is repeated.
      for (let x = Math.ceil(2.5 * scale); x < widthPx - Math.ceil(2.5 * scale); x++)
        for (let y = 0; y < 3; y++)
          expect(Math.abs(data[y * widthPx + x]! - value((x + 0.5) / scale))).toBeLessThanOrEqual(1.5);
    }
  });

  it('keeps flat colours exactly, under any alpha of at least one step', () => {
    const flat = anyRaster(1).filter((raster) => !raster.hasAlpha || raster.data.at(-1)! > 0);
    fc.assert(
      fc.property(
        flat,
        fc.integer({ min: 1, max: 5 }),
        fc.integer({ min: 1, max: 5 }),
        (raster, width, height) => {
          const enlarged = enlargeRaster(raster, width, height);
          expect(enlarged).toMatchObject({ widthPx: width, heightPx: height });
          for (let y = 0; y < height; y++)
            for (let x = 0; x < width; x++) expect(pixelAt(enlarged, x, y)).toEqual([...raster.data]);
        },
      ),
      { seed: 42, numRuns: 300 },
    );
  });

  it('weighs colour by alpha: what hides under clear pixels never shows', () => {
    fc.assert(
      fc.property(anyRaster(6, { hasAlpha: true }), fc.nat(9), fc.nat(9), (raster, wider, higher) => {
        const cleaned = { ...raster, data: raster.data.slice() };
        const channels = raster.model === 'gray' ? 2 : 4;
        for (let pixel = 0; pixel < cleaned.data.length; pixel += channels)
          if (cleaned.data[pixel + channels - 1] === 0) cleaned.data.fill(0, pixel, pixel + channels);
        const size = [raster.widthPx + wider, raster.heightPx + higher] as const;
        // At its own size the picture is given back as it is, hidden colours and all.
        if (wider + higher > 0)
          expect(enlargeRaster(raster, ...size)).toEqual(enlargeRaster(cleaned, ...size));
      }),
      { seed: 43, numRuns: 200 },
    );
  });

  it('is the same turned about: transposing before or after makes no difference beyond rounding', () => {
    fc.assert(
      fc.property(anyRaster(6, { hasAlpha: false, model: 'gray' }), (raster) => {
        const { widthPx, heightPx, data } = raster;
        const transposed = rasterOf(
          { ...raster, widthPx: heightPx, heightPx: widthPx },
          Array.from(data, (_, i) => data[(i % heightPx) * widthPx + Math.floor(i / heightPx)]!),
        );
        const wide = enlargeRaster(raster, widthPx + 3, heightPx + 5);
        const high = enlargeRaster(transposed, heightPx + 5, widthPx + 3);
        for (let y = 0; y < wide.heightPx; y++)
          for (let x = 0; x < wide.widthPx; x++)
            expect(Math.abs(pixelAt(wide, x, y)[0]! - pixelAt(high, y, x)[0]!)).toBeLessThanOrEqual(1);
      }),
      { seed: 44, numRuns: 100 },
    );
  });

  it('stays within the scale of its depth where the kernel overshoots', () => {
    const edge = rasterOf(
      { widthPx: 4, heightPx: 1, model: 'gray', hasAlpha: false, depth: 8 },
      [0, 0, 255, 255],
    );
    const { data } = enlargeRaster(edge, 40, 1);
    // Without clipping 255 would wrap round to a small number beside the edge.
    expect(Math.min(...data.subarray(0, 15))).toBe(0);
    expect(Math.max(...data.subarray(0, 15))).toBeLessThan(20);
    expect(Math.min(...data.subarray(25))).toBe(fullScaleOf(edge));
  });
});
