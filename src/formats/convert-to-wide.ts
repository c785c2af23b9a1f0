import type { PixelTransform } from '../icc/pixel-transform.ts';
import { channelsOf, createRaster, type Raster } from '../raster/raster.ts';

/** What 8 bits round to white is white: tables miss it by less, and white prints nothing. */
const WHITE_FROM = 65535 - 128;

/**
 * The raster's colours at 16 bits in the three channels that the transform gives; alpha is kept, hidden colours are
 * converted too. The raster is not changed.
 */
export function convertToWide(raster: Raster, transform: PixelTransform): Raster {
  const { widthPx, heightPx, hasAlpha, depth, data } = raster;
  const wide = createRaster({ widthPx, heightPx, model: 'rgb', hasAlpha, depth: 16 });
  const [from, to] = [channelsOf(raster), channelsOf(wide)];
  const deep = new Uint16Array(widthPx * from);
  const target = wide.data as Uint16Array;
  for (let y = 0; y < heightPx; y += 1) {
    const source = data.subarray(y * widthPx * from, (y + 1) * widthPx * from);
    if (depth === 16) deep.set(source);
    else for (let i = 0; i < source.length; i += 1) deep[i] = source[i]! * 257;
    const row = target.subarray(y * widthPx * to, (y + 1) * widthPx * to);
    transform.convert16(deep, row, widthPx, from, to);
    for (let x = 0; x < widthPx; x += 1) {
      const at = x * to;
      if (row[at]! >= WHITE_FROM && row[at + 1]! >= WHITE_FROM && row[at + 2]! >= WHITE_FROM)
        row.fill(65535, at, at + 3);
      if (hasAlpha) row[at + 3] = deep[(x + 1) * from - 1]!;
    }
  }
  return wide;
}
