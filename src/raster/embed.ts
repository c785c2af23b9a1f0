import type { RectPx } from '../geometry/rectangle.ts';
import { channelsOf, createRaster, fullScaleOf, type Raster } from './raster.ts';

/** A copy on a clear canvas that shows `rectPx` of the raster's own frame, all of the raster included; with alpha. */
export function embedRaster(raster: Raster, rectPx: RectPx): Raster {
  const target = createRaster({ ...raster, widthPx: rectPx.width, heightPx: rectPx.height, hasAlpha: true });
  const channels = channelsOf(raster);
  const wanted = channelsOf(target);
  const full = fullScaleOf(raster);
  for (let y = 0; y < raster.heightPx; y++) {
    let to = ((y - rectPx.y) * rectPx.width - rectPx.x) * wanted;
    const from = y * raster.widthPx * channels;
    if (raster.hasAlpha) {
      target.data.set(raster.data.subarray(from, from + raster.widthPx * channels), to);
      continue;
    }
    for (let at = from; at < from + raster.widthPx * channels; at += channels, to += wanted) {
      for (let k = 0; k < channels; k++) target.data[to + k] = raster.data[at + k]!;
      target.data[to + channels] = full;
    }
  }
  return target;
}
