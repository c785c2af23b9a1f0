import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { mirrorRaster } from '../../src/raster/mirror.ts';
import { anyRaster, pixelAt, rasterOf } from './any-raster.ts';

describe('mirrorRaster', () => {
  it('reverses each row and keeps the order of the rows', () => {
    const raster = rasterOf({ widthPx: 3, heightPx: 2, model: 'gray', hasAlpha: false, depth: 8 }, [
      ...[1, 2, 3],
      ...[4, 5, 6],
    ]);
    expect([...mirrorRaster(raster).data]).toEqual([3, 2, 1, 6, 5, 4]);
    expect([...raster.data]).toEqual([1, 2, 3, 4, 5, 6]);
  });

  it('mirrors whole pixels, not samples, whatever the kind of raster', () => {
    fc.assert(
      fc.property(anyRaster(), (raster) => {
        const mirrored = mirrorRaster(raster);
        for (let y = 0; y < raster.heightPx; y++)
          for (let x = 0; x < raster.widthPx; x++)
            expect(pixelAt(mirrored, x, y)).toEqual(pixelAt(raster, raster.widthPx - 1 - x, y));
      }),
      { seed: 5, numRuns: 200 },
    );
  });

  it('twice is the picture itself', () => {
    fc.assert(
      fc.property(anyRaster(), (raster) => {
        expect(mirrorRaster(mirrorRaster(raster))).toEqual(raster);
      }),
      { seed: 6, numRuns: 200 },
    );
  });

  it('gives the same when it writes into the picture itself', () => {
    fc.assert(
      fc.property(anyRaster(), (raster) => {
        const apart = mirrorRaster(raster);
        expect(mirrorRaster(raster, raster)).toBe(raster);
        expect(raster).toEqual(apart);
      }),
      { seed: 7, numRuns: 200 },
    );
  });
});
