import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { listAlphaRuns } from '../../src/raster/alpha-runs.ts';
import { listRuns } from '../../src/raster/connected-areas.ts';
import { createRaster, type Raster } from '../../src/raster/raster.ts';

/** Samples near the limits, so that each is met from both sides; colours that would carry into alpha are among them. */
const sample = (depth: 8 | 16) =>
  depth === 8
    ? fc.constantFrom(0, 1, 2, 126, 127, 128, 254, 255)
    : fc.constantFrom(0, 1, 255, 256, 32767, 32768, 65535);

const pictures: fc.Arbitrary<Raster> = fc
  .record({
    widthPx: fc.integer({ min: 1, max: 9 }),
    heightPx: fc.integer({ min: 1, max: 6 }),
    model: fc.constantFrom('gray' as const, 'rgb' as const, 'cmyk' as const),
    hasAlpha: fc.boolean(),
    depth: fc.constantFrom(8 as const, 16 as const),
  })
  .chain((shape) => {
    const raster = createRaster(shape);
    const { length } = raster.data;
    return fc.array(sample(shape.depth), { minLength: length, maxLength: length }).map((values) => {
      raster.data.set(values);
      return raster;
    });
  });

describe('runs by alpha', () => {
  it('are those of a mask, for every kind of raster, box and limit', () => {
    fc.assert(
      fc.property(
        pictures,
        fc.double({ min: 0, max: 1, noNaN: true }),
        fc.boolean(),
        (raster, share, high) => {
          const { widthPx, heightPx, hasAlpha, depth, model } = raster;
          const full = depth === 8 ? 255 : 65535;
          const least = share * full;
          const boxPx = { x: widthPx >> 2, y: heightPx >> 2, width: widthPx - (widthPx >> 2), height: 1 };
          boxPx.height = heightPx - boxPx.y;
          const channels = { gray: 1, rgb: 3, cmyk: 4 }[model] + (hasAlpha ? 1 : 0);
          const mask = Uint8Array.from({ length: boxPx.width * boxPx.height }, (_, i) => {
            const pixel = (boxPx.y + Math.floor(i / boxPx.width)) * widthPx + boxPx.x + (i % boxPx.width);
            const alpha = hasAlpha ? raster.data[(pixel + 1) * channels - 1]! : full;
            return alpha >= least === high ? 1 : 0;
          });
          const found = listAlphaRuns(raster, boxPx, high ? { from: least } : { below: least });
          expect(found).toEqual(listRuns(mask, boxPx.width));
        },
      ),
      { numRuns: 500 },
    );
  });
});
