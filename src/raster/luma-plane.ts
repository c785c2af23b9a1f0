import { LUMA_BLUE, LUMA_GREEN, LUMA_RED } from '../colour/luma.ts';
import { bandsOverWhite } from './bands-over-white.ts';
import { fullScaleOf, type Raster } from './raster.ts';

/** Weights in 1/65536, so that sums stay whole; rounded, they still add up to 1. */
const WHOLE = 65536;
const RED = Math.round(LUMA_RED * WHOLE);
const GREEN = Math.round(LUMA_GREEN * WHOLE);
const BLUE = Math.round(LUMA_BLUE * WHOLE);

/** Luma of every pixel over white, 0…255. Gray or rgb. */
export function makeLumaPlane(raster: Raster): Uint8Array {
  const plane = new Uint8Array(raster.widthPx * raster.heightPx);
  const scale = fullScaleOf(raster) === 255 ? 1 : 1 / 257;
  for (const { colours, firstPixel, pixels } of bandsOverWhite(raster))
    for (let i = 0; i < pixels; i += 1) {
      const sum = RED * colours[3 * i]! + GREEN * colours[3 * i + 1]! + BLUE * colours[3 * i + 2]!;
      plane[firstPixel + i] = (sum * scale) / WHOLE + 0.5;
    }
  return plane;
}
