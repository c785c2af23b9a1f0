import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { turnRaster } from '../../src/raster/turn.ts';
import { paintRaster } from '../pictures.ts';
import { anyRaster, rasterOf } from './any-raster.ts';

const picture = rasterOf({ widthPx: 3, heightPx: 2, model: 'gray', hasAlpha: false, depth: 8 }, [
  ...[1, 2, 3],
  ...[4, 5, 6],
]);

describe('turnRaster', () => {
  it.each([
    [90, 2, 3, [4, 1, 5, 2, 6, 3]],
    [180, 3, 2, [6, 5, 4, 3, 2, 1]],
    [270, 2, 3, [3, 6, 2, 5, 1, 4]],
  ] as const)('turns clockwise by %i degrees', (degrees, widthPx, heightPx, samples) => {
    const turned = turnRaster(picture, degrees);
    expect(turned).toMatchObject({ widthPx, heightPx });
    expect([...turned.data]).toEqual(samples);
  });

  it('four quarter turns change nothing, and quarter turns add up', () => {
    fc.assert(
      fc.property(anyRaster(), (raster) => {
        const quarter = turnRaster(raster, 90);
        const half = turnRaster(quarter, 90);
        expect(half).toEqual(turnRaster(raster, 180));
        expect(turnRaster(half, 90)).toEqual(turnRaster(raster, 270));
        expect(turnRaster(turnRaster(half, 90), 90)).toEqual(raster);
      }),
      { seed: 4, numRuns: 200 },
    );
  });

  it('crosses the borders of its tiles rightly', () => {
    const large = paintRaster(70, 45, (x, y) => [x, y, x ^ y, 255]);
    const turned = turnRaster(large, 90);
    for (let y = 0; y < 70; y++)
      for (let x = 0; x < 45; x++)
        expect([...turned.data.subarray((y * 45 + x) * 4, (y * 45 + x) * 4 + 2)]).toEqual([y, 44 - x]);
  });
});
