import type { PixelTransform } from '../icc/pixel-transform.ts';
import { type ColourModel, channelsOf, createRaster, type Raster } from '../raster/raster.ts';

/**
 * The raster's colours in sRGB: gray where the transform gives one channel, else RGB; alpha is kept, hidden colours
 * are converted too, colours that sRGB cannot hold are clipped. The transform takes the raster's colour channels.
 * Where it gives as many as it takes, the raster is changed **in its own memory**, so that it stands there once.
 */
export function convertToSrgb(raster: Raster, transform: PixelTransform): Raster {
  const model: ColourModel = transform.outputChannels === 1 ? 'gray' : 'rgb';
  const target =
    transform.inputChannels === transform.outputChannels ? raster : createRaster({ ...raster, model });
  const pixels = raster.widthPx * raster.heightPx;
  const strides = [channelsOf(raster), channelsOf(target)] as const;
  if (raster.data instanceof Uint16Array)
    transform.convert16(raster.data, target.data as Uint16Array, pixels, ...strides);
  else transform.convert8(raster.data, target.data as Uint8Array, pixels, ...strides);
  if (target !== raster && raster.hasAlpha) copyAlpha(raster.data, target.data, ...strides);
  return target;
}

function copyAlpha(
  source: Raster['data'],
  target: Raster['data'],
  sourceStride: number,
  targetStride: number,
): void {
  for (
    let from = sourceStride - 1, to = targetStride - 1;
    from < source.length;
    from += sourceStride, to += targetStride
  )
    target[to] = source[from]!;
}
