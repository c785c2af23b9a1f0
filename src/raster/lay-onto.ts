import { channelsOf, type Raster } from './raster.ts';

/** Copies a picture onto another of the same model, alpha and depth, in place; what overhangs is left out. */
export function layOnto(page: Raster, piece: Raster, x: number, y: number): void {
  const channels = channelsOf(page);
  if (channels !== channelsOf(piece) || page.model !== piece.model || page.depth !== piece.depth)
    throw new Error('Expected two pictures of one kind.');
  const left = Math.max(x, 0);
  const right = Math.min(x + piece.widthPx, page.widthPx);
  const bottom = Math.min(y + piece.heightPx, page.heightPx);
  if (right <= left) return;
  for (let row = Math.max(y, 0); row < bottom; row++) {
    const from = ((row - y) * piece.widthPx + left - x) * channels;
    const samples = piece.data.subarray(from, from + (right - left) * channels);
    page.data.set(samples, (row * page.widthPx + left) * channels);
  }
}
