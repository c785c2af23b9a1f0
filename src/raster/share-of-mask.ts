import { createRaster, type Raster } from './raster.ts';

/** Shares are told in this many steps, so that the picture of a noisy mask stays small. */
const STEPS = 4;

/**
 * A mask of `widthPx` columns (1: marked), reduced `by` times each way to 8-bit gray: the share of marked pixels in each
 * cell, in quarters, up, so that nothing marked is lost. null where nothing is marked.
 */
export function shareOfMask(mask: Uint8Array, widthPx: number, by: number): Raster | null {
  const heightPx = mask.length / widthPx;
  const columns = Math.ceil(widthPx / by);
  const rows = Math.ceil(heightPx / by);
  const counts = new Uint32Array(columns * rows);
  let found = false;
  for (let at = mask.indexOf(1); at !== -1; at = mask.indexOf(1, at + 1)) {
    found = true;
    counts[Math.floor(Math.floor(at / widthPx) / by) * columns + Math.floor((at % widthPx) / by)]! += 1;
  }
  if (!found) return null;
  const shares = createRaster({ widthPx: columns, heightPx: rows, model: 'gray', hasAlpha: false, depth: 8 });
  for (let cell = 0; cell < counts.length; cell += 1)
    shares.data[cell] = Math.min(255, Math.ceil((counts[cell]! * STEPS) / by ** 2) * (256 / STEPS));
  return shares;
}
