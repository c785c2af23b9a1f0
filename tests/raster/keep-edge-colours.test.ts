import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { keepEdgeColours } from '../../src/raster/keep-edge-colours.ts';
import { CLEAR, GREEN, paintRaster, seededNumbers } from '../pictures.ts';
import { anyRaster, pixelAt, rasterOf } from './any-raster.ts';

describe('keepEdgeColours', () => {
  const left = { x: 0, y: 0, width: 8, height: 8 };
  /** Green on the left half, nothing on the right. */
  const source = paintRaster(8, 8, (x) => (x < 4 ? GREEN : CLEAR));

  it('takes the mean anew inside the edge, where colour and alpha were clipped apart', () => {
    const resampled = paintRaster(4, 4, (x) => (x < 2 ? [60, 130, 50, 255] : CLEAR));
    const kept = keepEdgeColours(resampled, source, left);
    expect(kept).toBe(resampled);
    expect(pixelAt(kept, 1, 1)).toEqual(GREEN);
    expect(pixelAt(kept, 3, 1)).toEqual(CLEAR);
  });

  it('gives the mean that the kernel gives, to the rounding', () => {
    // One row, reduced to half: an output pixel is made of eight source pixels, its own two among them.
    const number = seededNumbers(46);
    const row = paintRaster(16, 1, (x) => [
      number() * 256,
      number() * 256,
      number() * 256,
      x < 12 ? 255 : 90,
    ]);
    const resampled = paintRaster(8, 1, (x) => [0, 0, 0, x < 6 ? 255 : 90]);
    const kept = keepEdgeColours(resampled, row, { x: 0, y: 0, width: 16, height: 1 });
    // Keys' kernel at distances of 7/4, 5/4, 3/4 and 1/4 on both sides, worked out by hand, times 128.
    const weights = [-3, -9, 29, 111, 111, 29, -9, -3];
    for (const x of [4, 5])
      for (const channel of [0, 1, 2]) {
        const taps = weights.map((weight, i) => {
          const pixel = pixelAt(row, Math.min(15, 2 * x - 3 + i), 0);
          return { share: weight * pixel[3]!, value: pixel[channel]! };
        });
        const total = taps.reduce((sum, { share }) => sum + share, 0);
        const mean = taps.reduce((sum, { share, value }) => sum + share * value, 0) / total;
        expect(pixelAt(kept, x, 0)[channel]).toBe(Math.min(255, Math.max(0, Math.round(mean))));
      }
  });

  it('holds a colour on the edge to the nearest that the art shows there', () => {
    const resampled = paintRaster(4, 4, (x) => (x < 2 ? [60, 110, 50, 200] : CLEAR));
    const kept = keepEdgeColours(resampled, source, left);
    expect(pixelAt(kept, 1, 1)).toEqual([40, 120, 60, 200]);
  });

  it('keeps alpha, but clears a pixel that no visible pixel is near', () => {
    const resampled = paintRaster(4, 4, (x) => (x < 2 ? [0, 255, 0, 9 + x] : x === 2 ? CLEAR : [1, 2, 3, 4]));
    const kept = keepEdgeColours(resampled, source, left);
    expect(pixelAt(kept, 0, 0)).toEqual([40, 120, 60, 9]);
    expect(pixelAt(kept, 1, 0)).toEqual([40, 120, 60, 10]);
    expect(pixelAt(kept, 3, 0)).toEqual(CLEAR);
  });

  it("leaves opaque parts out of the kernel's reach alone: there a kernel may sharpen", () => {
    const wide = paintRaster(20, 2, (x) => (x < 10 ? GREEN : CLEAR));
    const resampled = paintRaster(20, 2, (x) => (x < 10 ? [41, 121, 61, 255] : CLEAR));
    const kept = keepEdgeColours(resampled, wide, { x: 0, y: 0, width: 20, height: 2 });
    expect(pixelAt(kept, 7, 0)).toEqual([41, 121, 61, 255]);
    expect(pixelAt(kept, 8, 0)).toEqual(GREEN);
  });

  it('looks only within the rectangle', () => {
    const two = paintRaster(8, 1, (x) => (x < 4 ? [200, 0, 0, 128] : [0, 0, 200, 128]));
    const resampled = paintRaster(2, 1, () => [100, 0, 100, 128]);
    const kept = keepEdgeColours(resampled, two, { x: 4, y: 0, width: 4, height: 1 });
    expect(pixelAt(kept, 0, 0)).toEqual([0, 0, 200, 128]);
  });

  it('changes nothing in a picture that is its own source', () => {
    fc.assert(
      fc.property(anyRaster(), (raster) => {
        const copy = { ...raster, data: raster.data.slice() };
        // Colours under clear pixels are nobody's and stay.
        const whole = { x: 0, y: 0, width: raster.widthPx, height: raster.heightPx };
        expect(keepEdgeColours(copy, raster, whole)).toEqual(raster);
      }),
      { seed: 45, numRuns: 300 },
    );
  });

  it('works at 16 bits and in gray', () => {
    const shape = { widthPx: 2, heightPx: 1, model: 'gray', hasAlpha: true, depth: 16 } as const;
    const gray = rasterOf(shape, [40000, 65535, 1, 0]);
    const resampled = rasterOf({ ...shape, widthPx: 1 }, [41000, 30000]);
    expect([...keepEdgeColours(resampled, gray, { x: 0, y: 0, width: 2, height: 1 }).data]).toEqual([
      40000, 30000,
    ]);
  });
});
