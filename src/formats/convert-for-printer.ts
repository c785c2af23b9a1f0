import type { PixelTransform } from '../icc/pixel-transform.ts';
import { channelsOf, createRaster, type Raster } from '../raster/raster.ts';

/**
 * An 8-bit rgb raster in a printer's own colours: rgb, with its alpha, in its own memory; or opaque cmyk, anew.
 * The transform takes three channels and gives three or four.
 */
export function convertForPrinter(raster: Raster, transform: PixelTransform): Raster {
  const { data, widthPx, heightPx } = raster;
  const pixels = widthPx * heightPx;
  if (raster.model !== 'rgb' || !(data instanceof Uint8Array))
    throw new Error('Expected an 8-bit rgb raster to convert for a printer.');
  if (transform.outputChannels === 3) {
    const stride = channelsOf(raster);
    transform.convert8(data, data, pixels, stride, stride);
    return raster;
  }
  if (raster.hasAlpha) throw new Error('Expected an opaque raster to convert to inks.');
  const inks = createRaster({ widthPx, heightPx, model: 'cmyk', hasAlpha: false, depth: 8 });
  transform.convert8(data, inks.data as Uint8Array, pixels);
  return inks;
}
