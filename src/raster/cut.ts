import { channelsOf, createRaster, type Raster } from './raster.ts';

/** Distance in px from a point (in px, pixel middles at .5) to a line: negative beyond it. */
export type DistancePx = (x: number, y: number) => number;

/**
 * The raster with every pixel cleared whose middle has a negative distance, returned in `into`: a raster of the
 * same content, a copy by default, or the raster itself, which is then changed. It must have alpha.
 * `distancePx` is asked only where the line can be: a true distance changes, from one point to another, by no more
 * than they lie apart.
 */
export function cutRaster(raster: Raster, distancePx: DistancePx, into: Raster = copyOf(raster)): Raster {
  const { widthPx, heightPx } = raster;
  const channels = channelsOf(raster);
  for (let y = 0; y < heightPx; y++)
    for (let x = 0; x < widthPx; ) {
      const distance = distancePx(x + 0.5, y + 0.5);
      const end = Math.min(widthPx, x + Math.max(1, Math.ceil(Math.abs(distance))));
      if (distance < 0) into.data.fill(0, (y * widthPx + x) * channels, (y * widthPx + end) * channels);
      x = end;
    }
  return into;
}

function copyOf(raster: Raster): Raster {
  const copy = createRaster(raster);
  copy.data.set(raster.data);
  return copy;
}
