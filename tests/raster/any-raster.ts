import fc from 'fast-check';
import { channelsOf, createRaster, fullScaleOf, type Raster } from '../../src/raster/raster.ts';

/** A raster of the given shape with these samples. */
export function rasterOf(shape: Omit<Raster, 'data'>, samples: readonly number[]): Raster {
  const raster = createRaster(shape);
  if (samples.length !== raster.data.length)
    throw new Error(`Expected ${raster.data.length} samples, received ${samples.length}.`);
  raster.data.set(samples);
  return raster;
}

/** The samples of one pixel. */
export function pixelAt(raster: Raster, x: number, y: number): number[] {
  const channels = channelsOf(raster);
  const at = (y * raster.widthPx + x) * channels;
  return [...raster.data.subarray(at, at + channels)];
}

/** Small rasters of every model, depth and alpha, or of the given kinds, with any samples. */
export function anyRaster(
  most = 9,
  kinds: Partial<Pick<Raster, 'model' | 'hasAlpha' | 'depth'>> = {},
): fc.Arbitrary<Raster> {
  return fc
    .record({
      widthPx: fc.integer({ min: 1, max: most }),
      heightPx: fc.integer({ min: 1, max: most }),
      model: kinds.model ? fc.constant(kinds.model) : fc.constantFrom('gray', 'rgb'),
      hasAlpha: kinds.hasAlpha === undefined ? fc.boolean() : fc.constant(kinds.hasAlpha),
      depth: kinds.depth ? fc.constant(kinds.depth) : fc.constantFrom(8, 16),
    })
    .chain((shape) => {
      const length = createRaster(shape).data.length;
      const sample = fc.oneof(
        fc.integer({ min: 0, max: fullScaleOf(shape) }),
        fc.constantFrom(0, fullScaleOf(shape)),
      );
      return fc
        .array(sample, { minLength: length, maxLength: length })
        .map((samples) => rasterOf(shape, samples));
    });
}
