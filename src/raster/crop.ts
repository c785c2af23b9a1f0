import type { RectPx } from '../geometry/rectangle.ts';
import { channelsOf, createRaster, type Raster } from './raster.ts';

/** The pixels of a rectangle that lies within the raster; the raster itself where that is all of it. */
export function cropRaster(raster: Raster, rectPx: RectPx): Raster {
  const { x, y, width, height } = rectPx;
  if (x === 0 && y === 0 && width === raster.widthPx && height === raster.heightPx) return raster;
  const cropped = createRaster({ ...raster, widthPx: width, heightPx: height });
  const channels = channelsOf(raster);
  const rowSamples = width * channels;
  for (let row = 0; row < height; row++) {
    const from = ((y + row) * raster.widthPx + x) * channels;
    cropped.data.set(raster.data.subarray(from, from + rowSamples), row * rowSamples);
  }
  return cropped;
}
