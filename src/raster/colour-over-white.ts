import { channelsOf, fullScaleOf, type Raster } from './raster.ts';

/** How the pixels of a raster lie, for looking at some of them; who needs all of them takes bands. */
export interface PixelsOverWhite {
  readonly raster: Raster;
  readonly channels: number;
  readonly full: number;
  /** Where green and blue lie after red; gray three times. */
  readonly green: number;
  readonly blue: number;
}

/** Gray or rgb. */
export function pixelsOverWhite(raster: Raster): PixelsOverWhite {
  if (raster.model === 'cmyk') throw new Error('Expected a gray or rgb raster, received cmyk.');
  const [green, blue] = raster.model === 'rgb' ? [1, 2] : [0, 0];
  return { raster, channels: channelsOf(raster), full: fullScaleOf(raster), green, blue };
}

/**
 * Writes one pixel as it is printed into a list, from `to` on: three samples of 0…255 composited over white in the samples'
 * own space; white outside the raster.
 */
export function writeOverWhite(
  { raster, channels, full, green, blue }: PixelsOverWhite,
  xPx: number,
  yPx: number,
  list: Float32Array,
  to: number,
): void {
  const { data, widthPx, heightPx, hasAlpha } = raster;
  const x = Math.floor(xPx);
  const y = Math.floor(yPx);
  if (x < 0 || y < 0 || x >= widthPx || y >= heightPx) {
    list.fill(255, to, to + 3);
    return;
  }
  const at = (y * widthPx + x) * channels;
  const alpha = hasAlpha ? data[at + channels - 1]! / full : 1;
  list[to] = 255 * (1 - alpha + (alpha * data[at]!) / full);
  list[to + 1] = 255 * (1 - alpha + (alpha * data[at + green]!) / full);
  list[to + 2] = 255 * (1 - alpha + (alpha * data[at + blue]!) / full);
}
