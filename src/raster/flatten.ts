import { channelsOf, fullScaleOf, type Raster } from './raster.ts';

/** An opaque colour, 0…255 each. */
export interface OpaqueColour {
  readonly r: number;
  readonly g: number;
  readonly b: number;
}

/**
 * The picture composited over a colour, in the samples' own space, as opaque 8-bit rgb. Gray or rgb at either
 * depth, with or without alpha; every sample is the exact mix rounded once (no mix of integers ends on a half).
 * `into` holds the result, at least three bytes a pixel: new by default, or the picture's own 8-bit rgb samples
 * with alpha, which are then overwritten, since no pixel is written before it is read.
 */
export function flattenRaster(
  raster: Raster,
  colour: OpaqueColour,
  into: Uint8Array = new Uint8Array(raster.widthPx * raster.heightPx * 3),
): Raster {
  const { widthPx, heightPx, model, hasAlpha, depth } = raster;
  if (model === 'cmyk') throw new Error('Expected a gray or rgb raster to flatten, received cmyk.');
  const flat = into.subarray(0, widthPx * heightPx * 3);
  if (model === 'rgb' && hasAlpha && depth === 8) flattenRgba8(raster.data as Uint8Array, colour, flat);
  else flattenAny(raster, colour, flat);
  return { widthPx, heightPx, model: 'rgb', hasAlpha: false, depth: 8, data: flat };
}

/** The usual case by itself: most pixels of a canvas are all art or all background. */
function flattenRgba8(data: Uint8Array, { r, g, b }: OpaqueColour, flat: Uint8Array): void {
  for (let source = 0, target = 0; target < flat.length; source += 4, target += 3) {
    const alpha = data[source + 3]!;
    if (alpha === 255) {
      flat[target] = data[source]!;
      flat[target + 1] = data[source + 1]!;
      flat[target + 2] = data[source + 2]!;
    } else if (alpha === 0) {
      flat[target] = r;
      flat[target + 1] = g;
      flat[target + 2] = b;
    } else {
      const clear = 255 - alpha;
      flat[target] = roundOver255(data[source]! * alpha + r * clear);
      flat[target + 1] = roundOver255(data[source + 1]! * alpha + g * clear);
      flat[target + 2] = roundOver255(data[source + 2]! * alpha + b * clear);
    }
  }
}

/** round(v / 255) for integers 0…65025, without a division; a test holds it against the division for all of them. */
export function roundOver255(v: number): number {
  const half = v + 128;
  return (half + (half >> 8)) >> 8;
}

function flattenAny(raster: Raster, { r, g, b }: OpaqueColour, flat: Uint8Array): void {
  const { data, hasAlpha } = raster;
  const channels = channelsOf(raster);
  const green = raster.model === 'rgb' ? 1 : 0;
  const full = fullScaleOf(raster);
  const perByte = full / 255;
  for (let source = 0, target = 0; target < flat.length; source += channels, target += 3) {
    const alpha = hasAlpha ? data[source + channels - 1]! : full;
    const clear = (full - alpha) * perByte;
    flat[target] = (data[source]! * alpha + r * clear) / (full * perByte) + 0.5;
    flat[target + 1] = (data[source + green]! * alpha + g * clear) / (full * perByte) + 0.5;
    flat[target + 2] = (data[source + 2 * green]! * alpha + b * clear) / (full * perByte) + 0.5;
  }
}
