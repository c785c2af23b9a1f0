import { type PixelUnits, viewPixelUnits } from './pixel-units.ts';
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
  // Both ends of a row are read before either is written: `into` may be the raster itself.
  const swap = perPixel === 3 ? swapThree : swapUnits;
  for (let y = 0; y < heightPx; y++) swap(from, to, y * rowUnits, (y + 1) * rowUnits - perPixel, perPixel);
  return into;
}

type Units = PixelUnits['data'];

function swapUnits(from: Units, to: Units, first: number, last: number, perPixel: number): void {
  for (let left = first, right = last; left <= right; left += perPixel, right -= perPixel)
    for (let unit = 0; unit < perPixel; unit++) {
      const sample = from[left + unit]!;
      to[left + unit] = from[right + unit]!;
      to[right + unit] = sample;
    }
}

/** 8-bit rgb, what a print-ready picture nearly always is: half the time of the loop above. */
function swapThree(from: Units, to: Units, first: number, last: number): void {
  for (let left = first, right = last; left <= right; left += 3, right -= 3) {
    const r = from[left]!;
    const g = from[left + 1]!;
    const b = from[left + 2]!;
    to[left] = from[right]!;
    to[left + 1] = from[right + 1]!;
    to[left + 2] = from[right + 2]!;
    to[right] = r;
    to[right + 1] = g;
    to[right + 2] = b;
  }
}
