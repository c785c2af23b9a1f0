import { channelsOf, type Raster } from './raster.ts';

/**
 * Copies a picture onto another of the same model, alpha and depth, in place; what overhangs is left out, and so are
 * pixels of the piece that are no part of it, where it has such.
 */
export function layOnto(
  page: Raster,
  piece: Raster,
  x: number,
  y: number,
  isPart?: (x: number, y: number) => boolean,
): void {
  const channels = channelsOf(page);
  if (channels !== channelsOf(piece) || page.model !== piece.model || page.depth !== piece.depth)
    throw new Error('Expected two pictures of one kind.');
  const left = Math.max(x, 0);
  const right = Math.min(x + piece.widthPx, page.widthPx);
  const bottom = Math.min(y + piece.heightPx, page.heightPx);
  if (right <= left) return;
  const copy = (row: number, from: number, to: number) => {
    const start = ((row - y) * piece.widthPx + from - x) * channels;
    const samples = piece.data.subarray(start, start + (to - from) * channels);
    page.data.set(samples, (row * page.widthPx + from) * channels);
  };
  for (let row = Math.max(y, 0); row < bottom; row++) {
    if (!isPart) copy(row, left, right);
    else
      for (const [from, to] of listRuns(left, right, (column) => isPart(column - x, row - y)))
        copy(row, from, to);
  }
}

/** Stretches of columns that are wanted, from their first to beyond their last. */
function* listRuns(
  left: number,
  right: number,
  isWanted: (column: number) => boolean,
): Iterable<readonly [from: number, to: number]> {
  let from = -1;
  for (let column = left; column <= right; column++) {
    if (column < right && isWanted(column)) {
      if (from < 0) from = column;
    } else if (from >= 0) {
      yield [from, column];
      from = -1;
    }
  }
}
