import { createPixelCounts, rowCounterFor } from './count-pixels.ts';
import { findExtents } from './find-extents.ts';
import type { Raster } from './raster.ts';
import type { Extents, Survey } from './survey.ts';

/**
 * Measures a gray or rgb picture for checks that look at its colours or its alpha: its extents (taken over where they are known) and, in one pass over the pixels
 * within them, alpha histogram, colour census and borders. Does not change the raster.
 */
export function surveyRaster(raster: Raster, extents: Extents = findExtents(raster)): Survey {
  const { widthPx, heightPx } = raster;
  const { rowSpansPx } = extents;
  const counts = createPixelCounts();
  const countRow = rowCounterFor(raster);
  const border = { top: 0, right: 0, bottom: 0, left: 0 };
  for (let y = 0; y < heightPx; y += 1) {
    const first = rowSpansPx[2 * y]!;
    const last = rowSpansPx[2 * y + 1]!;
    if (last < first) continue;
    const before = counts.visiblePixels;
    countRow(counts, y * widthPx + first, y * widthPx + last + 1);
    if (first === 0) border.left += 1;
    if (last === widthPx - 1) border.right += 1;
    if (y === 0) border.top = counts.visiblePixels - before;
    if (y === heightPx - 1) border.bottom = counts.visiblePixels - before;
  }
  const { visiblePixels, pureWhitePixels, alphaHistogram, census } = counts;
  if (raster.hasAlpha) alphaHistogram[0] = widthPx * heightPx - visiblePixels;
  else alphaHistogram[255] = visiblePixels;
  return { ...extents, visiblePixels, pureWhitePixels, alphaHistogram, census, borderPixels: border };
}
