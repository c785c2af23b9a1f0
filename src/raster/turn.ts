import { viewPixelUnits } from './pixel-units.ts';
import { createRaster, type Raster } from './raster.ts';

/** Source pixels of a turned row lie a row apart: square tiles of this side stay in the processor's cache. */
const TILE_PX = 32;

/** The picture turned clockwise as seen on the screen; no pixel changes its value. */
export function turnRaster(raster: Raster, degrees: 90 | 180 | 270): Raster {
  const { widthPx, heightPx } = raster;
  const upright = degrees === 180;
  const turned = createRaster({
    ...raster,
    widthPx: upright ? widthPx : heightPx,
    heightPx: upright ? heightPx : widthPx,
  });
  const from = viewPixelUnits(raster);
  const to = viewPixelUnits(turned);
  const units = from.perPixel;
  // Where the source pixel (0, 0) goes, and how far apart its neighbours to the right and below land.
  const [start, perX, perY] = {
    90: [heightPx - 1, heightPx, -1] as const,
    180: [widthPx * heightPx - 1, -1, -widthPx] as const,
    270: [(widthPx - 1) * heightPx, -heightPx, 1] as const,
  }[degrees];
  for (let top = 0; top < heightPx; top += TILE_PX)
    for (let left = 0; left < widthPx; left += TILE_PX)
      for (let y = top; y < Math.min(top + TILE_PX, heightPx); y++)
        for (let x = left; x < Math.min(left + TILE_PX, widthPx); x++) {
          const source = (y * widthPx + x) * units;
          const target = (start + x * perX + y * perY) * units;
          for (let unit = 0; unit < units; unit++) to.data[target + unit] = from.data[source + unit]!;
        }
  return turned;
}
