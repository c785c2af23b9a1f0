import type { OpaqueColour } from './flatten.ts';
import { channelsOf, createRaster, fullScaleOf, type Raster } from './raster.ts';

/**
 * The picture composited over a colour, 0…255 each and not always whole, in the samples' own space, as opaque 16-bit
 * rgb: for art that is converted once more and rounded then. Gray or rgb at either depth, with or without alpha.
 */
export function flattenDeep(raster: Raster, { r, g, b }: OpaqueColour): Raster {
  const { widthPx, heightPx, model, hasAlpha, data } = raster;
  if (model === 'cmyk') throw new Error('Expected a gray or rgb raster to flatten, received cmyk.');
  const flat = createRaster({ widthPx, heightPx, model: 'rgb', hasAlpha: false, depth: 16 });
  const channels = channelsOf(raster);
  const green = model === 'rgb' ? 1 : 0;
  const full = fullScaleOf(raster);
  const scale = 65535 / full;
  for (let source = 0, target = 0; target < flat.data.length; source += channels, target += 3) {
    const share = hasAlpha ? data[source + channels - 1]! / full : 1;
    const clear = (1 - share) * 257;
    flat.data[target] = data[source]! * scale * share + r * clear + 0.5;
    flat.data[target + 1] = data[source + green]! * scale * share + g * clear + 0.5;
    flat.data[target + 2] = data[source + 2 * green]! * scale * share + b * clear + 0.5;
  }
  return flat;
}
