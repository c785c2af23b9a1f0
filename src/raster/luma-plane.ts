import { bandsOverWhite } from './bands-over-white.ts';
import { fullScaleOf, type Raster } from './raster.ts';

/** In 1/65536, so that sums stay whole; the three weights add up to 65536. */
const [RED, GREEN, BLUE] = [13933, 46871, 4732];

/**
 * Luma of every pixel over white, 0…255: 0.2126 R + 0.7152 G + 0.0722 B of the coded samples (ITU-R BT.709-6, 3.2), a
 * stand-in for lightness that costs one pass. Gray or rgb.
 */
export function makeLumaPlane(raster: Raster): Uint8Array {
  const plane = new Uint8Array(raster.widthPx * raster.heightPx);
  const scale = fullScaleOf(raster) === 255 ? 1 : 1 / 257;
  for (const { colours, firstPixel, pixels } of bandsOverWhite(raster))
    for (let i = 0; i < pixels; i += 1) {
      const sum = RED * colours[3 * i]! + GREEN * colours[3 * i + 1]! + BLUE * colours[3 * i + 2]!;
      plane[firstPixel + i] = (sum * scale) / 65536 + 0.5;
    }
  return plane;
}
