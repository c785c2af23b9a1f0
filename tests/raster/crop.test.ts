import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cropRaster } from '../../src/raster/crop.ts';
import { anyRaster, pixelAt, rasterOf } from './any-raster.ts';

describe('cropRaster', () => {
  it('keeps the rectangle, top left included, bottom right not', () => {
    const raster = rasterOf({ widthPx: 4, heightPx: 3, model: 'gray', hasAlpha: false, depth: 8 }, [
      ...[11, 12, 13, 14],
      ...[21, 22, 23, 24],
      ...[31, 32, 33, 34],
    ]);
    const cropped = cropRaster(raster, { x: 1, y: 1, width: 2, height: 2 });
    expect([...cropped.data]).toEqual([22, 23, 32, 33]);
    expect(cropped).toMatchObject({ widthPx: 2, heightPx: 2 });
  });

  it('gives back the raster itself for all of it', () => {
    const raster = rasterOf({ widthPx: 1, heightPx: 1, model: 'gray', hasAlpha: false, depth: 8 }, [7]);
    expect(cropRaster(raster, { x: 0, y: 0, width: 1, height: 1 })).toBe(raster);
  });

  it('puts every pixel of the rectangle where it was, whatever the kind of raster', () => {
    const cases = anyRaster().chain((raster) =>
      fc.tuple(
        fc.constant(raster),
        fc.nat(raster.widthPx - 1),
        fc.nat(raster.heightPx - 1),
        fc.nat(),
        fc.nat(),
      ),
    );
    fc.assert(
      fc.property(cases, ([raster, x, y, right, down]) => {
        const width = 1 + (right % (raster.widthPx - x));
        const height = 1 + (down % (raster.heightPx - y));
        const cropped = cropRaster(raster, { x, y, width, height });
        for (let row = 0; row < height; row++)
          for (let column = 0; column < width; column++)
            expect(pixelAt(cropped, column, row)).toEqual(pixelAt(raster, x + column, y + row));
      }),
      { seed: 3, numRuns: 200 },
    );
  });
});
