import type { PixelTransform } from '../icc/pixel-transform.ts';
import { channelsOf, type Raster } from '../raster/raster.ts';

/**
 * Brings the raster's colours to sRGB **in its own memory** and gives it back; alpha is not touched, hidden colours
 * are converted too. The transform's channels must be the raster's colours (gray 1, RGB 3).
 * Colours that sRGB cannot hold are clipped.
 */
export function convertToSrgb(raster: Raster, transform: PixelTransform): Raster {
  const stride = channelsOf(raster);
  const pixels = raster.widthPx * raster.heightPx;
  const { data } = raster;
  if (data instanceof Uint16Array) transform.convert16(data, data, pixels, stride, stride);
  else transform.convert8(data, data, pixels, stride, stride);
  return raster;
}
