import { channelsOf, fullScaleOf, type Raster } from './raster.ts';

/**
 * Mean over all pixels of their largest ink, 0 (bare) … 1: of inks as they stand, of light (gray, rgb) the complement of
 * its darkest sample, as the file holds it; as much less as alpha lets the bare paper through. Solid red and solid black
 * count the same, mid-gray half. 0 for a raster without pixels. (own choice: no printer tells how it mixes its inks)
 */
export function measureInkCoverage(raster: Raster): number {
  const { data, hasAlpha, model, widthPx, heightPx } = raster;
  const full = fullScaleOf(raster);
  const step = channelsOf(raster);
  const colours = step - (hasAlpha ? 1 : 0);
  const isInk = model === 'cmyk';
  let sum = 0;
  for (let at = 0; at < data.length; at += step) {
    let most = isInk ? data[at]! : full - data[at]!;
    for (let c = 1; c < colours; c += 1) {
      const ink = isInk ? data[at + c]! : full - data[at + c]!;
      if (ink > most) most = ink;
    }
    sum += hasAlpha ? (most * data[at + colours]!) / full : most;
  }
  const pixels = widthPx * heightPx;
  return pixels === 0 ? 0 : sum / full / pixels;
}
