import { viewPixelUnits } from './pixel-units.ts';
import { createRaster, type Raster } from './raster.ts';

/**
 * Left-right reversal, returned in `into`: a raster of the same shape, new by default. It may be the raster
 * itself, which is then changed and costs no memory.
 */
export function mirrorRaster(raster: Raster, into: Raster = createRaster(raster)): Raster {
  const { widthPx, heightPx } = raster;
  const { data: from, perPixel } = viewPixelUnits(raster);
  const { data: to } = viewPixelUnits(into);
  const rowUnits = widthPx * perPixel;
  for (let y = 0; y < heightPx; y++) {
    let left = y * rowUnits;
    let right = left + rowUnits - perPixel;
    // Both ends of a row are read before either is written: `into` may be the raster itself.
    for (; left <= right; left += perPixel, right -= perPixel)
      for (let unit = 0; unit < perPixel; unit++) {
        const sample = from[left + unit]!;
        to[left + unit] = from[right + unit]!;
        to[right + unit] = sample;
      }
  }
  return into;
}
