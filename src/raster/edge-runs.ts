import { channelsOf, fullScaleOf, type Raster } from './raster.ts';

/**
 * Calls `visit` for each run of pixels near an edge of alpha, row by row from the top: from column `start` to
 * before `end`, a pixel of less than full alpha lies within `reachX` columns and `reachY` rows. A picture without
 * alpha has no such run. Costs the same whatever the reach.
 */
export function visitEdgeRuns(
  raster: Raster,
  reachX: number,
  reachY: number,
  visit: (y: number, start: number, end: number) => void,
): void {
  if (!raster.hasAlpha) return;
  const { widthPx, heightPx } = raster;
  /** Per column, the lowest row so far, 1 being the first, whose pixel is not opaque. */
  const lowest = new Int32Array(widthPx);
  for (let y = 0, seen = 0; y < heightPx; y++) {
    for (; seen < Math.min(y + reachY + 1, heightPx); seen++) markRow(raster, seen, lowest);
    const least = Math.max(1, y + 1 - reachY);
    visitRuns(lowest, least, reachX, (start, end) => visit(y, start, end));
  }
}

/** Notes the row for each column in which it is not opaque. */
function markRow({ data, widthPx, model, hasAlpha, depth }: Raster, y: number, lowest: Int32Array): void {
  const channels = channelsOf({ model, hasAlpha });
  const full = fullScaleOf({ depth });
  for (let x = 0, alpha = (y * widthPx + 1) * channels - 1; x < widthPx; x++, alpha += channels)
    if (data[alpha] !== full) lowest[x] = y + 1;
}

/** The runs of columns with one of at least `least` within `reach`. */
function visitRuns(
  lowest: Int32Array,
  least: number,
  reach: number,
  visit: (start: number, end: number) => void,
): void {
  let start = 0;
  let end = 0;
  for (let x = 0; x < lowest.length; x++) {
    if (lowest[x]! < least) continue;
    if (x - reach > end) {
      if (end > start) visit(start, end);
      start = x - reach;
    }
    end = Math.min(x + reach + 1, lowest.length);
  }
  if (end > start) visit(start, end);
}
