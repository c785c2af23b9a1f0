import { channelsOf, fullScaleOf, type Raster } from './raster.ts';

/**
 * Calls `visit` for each row, from the top, that has a pixel near an edge of alpha: 1 in `nearEdge` where a pixel
 * of less than full alpha lies within `reachX` columns and `reachY` rows. The array is used again for the next
 * row. A picture without alpha has no such row. Costs the same whatever the reach.
 */
export function visitEdgeRows(
  raster: Raster,
  reachX: number,
  reachY: number,
  visit: (y: number, nearEdge: Uint8Array) => void,
): void {
  if (!raster.hasAlpha) return;
  const { widthPx, heightPx } = raster;
  const nearEdge = new Uint8Array(widthPx);
  /** Per column, the lowest row so far, 1 being the first, whose pixel is not opaque. */
  const lowest = new Int32Array(widthPx);
  let lowestOfAll = 0;
  for (let y = 0, seen = 0; y < heightPx; y++) {
    for (; seen < Math.min(y + reachY + 1, heightPx); seen++)
      if (markRow(raster, seen, lowest)) lowestOfAll = seen + 1;
    const least = Math.max(1, y + 1 - reachY);
    if (lowestOfAll < least) continue;
    spread(lowest, least, reachX, nearEdge);
    visit(y, nearEdge);
  }
}

/** Notes the row for each column in which it is not opaque; true when there is one. */
function markRow({ data, widthPx, model, hasAlpha, depth }: Raster, y: number, lowest: Int32Array): boolean {
  const channels = channelsOf({ model, hasAlpha });
  const full = fullScaleOf({ depth });
  let marked = false;
  for (let x = 0, alpha = (y * widthPx + 1) * channels - 1; x < widthPx; x++, alpha += channels)
    if (data[alpha] !== full) {
      lowest[x] = y + 1;
      marked = true;
    }
  return marked;
}

/** 1 where a column within `reach` has a row of at least `least`. */
function spread(lowest: Int32Array, least: number, reach: number, near: Uint8Array): void {
  const width = lowest.length;
  near.fill(0);
  for (let x = 0; x < width; x++)
    if (lowest[x]! >= least) {
      // The run of such columns, and its reach to both sides.
      const start = x;
      while (x + 1 < width && lowest[x + 1]! >= least) x++;
      near.fill(1, Math.max(0, start - reach), x + reach + 1);
    }
}
