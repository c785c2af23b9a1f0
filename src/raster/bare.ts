import { channelsOf, createRaster, fullScaleOf, type Raster } from './raster.ts';

/** A picture of the same shape that prints nothing: white, without ink, clear where it has alpha. */
export function bareRaster(raster: Raster): Raster {
  const bare = createRaster(raster);
  if (raster.model === 'cmyk') return bare;
  bare.data.fill(fullScaleOf(raster));
  if (raster.hasAlpha) {
    const channels = channelsOf(raster);
    for (let at = channels - 1; at < bare.data.length; at += channels) bare.data[at] = 0;
  }
  return bare;
}
