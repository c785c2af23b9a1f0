import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cutRaster } from '../../src/raster/cut.ts';
import { paintRaster } from '../pictures.ts';
import { anyRaster, pixelAt } from './any-raster.ts';

const solid = (widthPx: number, heightPx: number) => paintRaster(widthPx, heightPx, () => [1, 2, 3, 255]);

describe('cutRaster', () => {
  it('clears exactly the pixels whose middle lies beyond the line, here a circle that crosses the borders', () => {
    const circles = fc.record({
      width: fc.integer({ min: 1, max: 60 }),
      height: fc.integer({ min: 1, max: 60 }),
      x: fc.double({ min: -20, max: 80, noNaN: true }),
      y: fc.double({ min: -20, max: 80, noNaN: true }),
      radius: fc.double({ min: 0, max: 70, noNaN: true }),
    });
    fc.assert(
      fc.property(circles, ({ width, height, x: middleX, y: middleY, radius }) => {
        const distance = (x: number, y: number) => radius - Math.hypot(x - middleX, y - middleY);
        const cut = cutRaster(solid(width, height), distance);
        for (let y = 0; y < height; y++)
          for (let x = 0; x < width; x++)
            expect(pixelAt(cut, x, y)).toEqual(
              distance(x + 0.5, y + 0.5) < 0 ? [0, 0, 0, 0] : [1, 2, 3, 255],
            );
      }),
      { seed: 11, numRuns: 200 },
    );
  });

  it('keeps a pixel whose middle lies on the line', () => {
    const cut = cutRaster(solid(4, 1), (x) => 2.5 - x);
    expect([0, 1, 2, 3].map((x) => pixelAt(cut, x, 0)[3])).toEqual([255, 255, 255, 0]);
  });

  it('asks far fewer times than there are pixels', () => {
    let asked = 0;
    cutRaster(solid(400, 400), (x, y) => {
      asked++;
      return 190 - Math.hypot(x - 200, y - 200);
    });
    expect(asked).toBeLessThan(160_000 / 10);
  });

  it('leaves the raster as it was, or changes it when asked to', () => {
    fc.assert(
      fc.property(anyRaster(9, { hasAlpha: true }), (raster) => {
        const before = raster.data.slice();
        const beyond = (x: number) => 2 - x;
        const cut = cutRaster(raster, beyond);
        expect(raster.data).toEqual(before);
        expect(cutRaster(raster, beyond, raster)).toBe(raster);
        expect(raster).toEqual(cut);
      }),
      { seed: 12, numRuns: 100 },
    );
  });
});
