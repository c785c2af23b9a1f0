import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cropRaster } from '../../src/raster/crop.ts';
import { padRaster } from '../../src/raster/pad.ts';
import { fullScaleOf } from '../../src/raster/raster.ts';
import { anyRaster, pixelAt, rasterOf } from './any-raster.ts';

const gray = rasterOf({ widthPx: 2, heightPx: 2, model: 'gray', hasAlpha: false, depth: 8 }, [1, 2, 3, 4]);

describe('padRaster', () => {
  it('lays the picture on a clear canvas at its place', () => {
    const canvas = padRaster(gray, { widthPx: 4, heightPx: 3, x: 1, y: 1 });
    expect(canvas).toMatchObject({ widthPx: 4, heightPx: 3, hasAlpha: true, model: 'gray', depth: 8 });
    expect([...canvas.data]).toEqual([
      ...[0, 0, 0, 0, 0, 0, 0, 0],
      ...[0, 0, 1, 255, 2, 255, 0, 0],
      ...[0, 0, 3, 255, 4, 255, 0, 0],
    ]);
  });

  it('cuts what overhangs on each side', () => {
    const around = (x: number, y: number) => [...padRaster(gray, { widthPx: 1, heightPx: 1, x, y }).data];
    expect(around(0, 0)).toEqual([1, 255]);
    expect(around(-1, 0)).toEqual([2, 255]);
    expect(around(0, -1)).toEqual([3, 255]);
    expect(around(-1, -1)).toEqual([4, 255]);
  });

  it.each([
    [1, 0],
    [-2, 0],
    [0, 1],
    [0, -2],
  ])('leaves the canvas clear for a picture beside it, at %i, %i', (x, y) => {
    expect([...padRaster(gray, { widthPx: 1, heightPx: 1, x, y }).data]).toEqual([0, 0]);
  });

  it('takes only the rectangle asked for', () => {
    const canvas = padRaster(
      gray,
      { widthPx: 2, heightPx: 2, x: 0, y: 0 },
      { x: 1, y: 0, width: 1, height: 2 },
    );
    expect([...canvas.data]).toEqual([2, 255, 0, 0, 4, 255, 0, 0]);
  });

  it('is undone by cropping, and clear all around', () => {
    const cases = fc.tuple(anyRaster(), fc.nat(5), fc.nat(5), fc.nat(5), fc.nat(5));
    fc.assert(
      fc.property(cases, ([raster, left, top, right, bottom]) => {
        const widthPx = left + raster.widthPx + right;
        const heightPx = top + raster.heightPx + bottom;
        const canvas = padRaster(raster, { widthPx, heightPx, x: left, y: top });
        const inside = cropRaster(canvas, {
          x: left,
          y: top,
          width: raster.widthPx,
          height: raster.heightPx,
        });
        const opaque = raster.hasAlpha ? [] : [fullScaleOf(raster)];
        for (let y = 0; y < heightPx; y++)
          for (let x = 0; x < widthPx; x++)
            if (x >= left && x < left + raster.widthPx && y >= top && y < top + raster.heightPx)
              expect(pixelAt(inside, x - left, y - top)).toEqual([
                ...pixelAt(raster, x - left, y - top),
                ...opaque,
              ]);
            else expect(pixelAt(canvas, x, y).every((sample) => sample === 0)).toBe(true);
      }),
      { seed: 8, numRuns: 200 },
    );
  });
});
