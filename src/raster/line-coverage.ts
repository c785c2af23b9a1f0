import type { DistancePx } from './cut.ts';

/** From here on a pixel is all on one side of a line, whichever way the line runs. */
const HALF_PX = 0.5;

/**
 * How much of each pixel of row `y` lies where the distance is positive, 0…255, written into `row`: the edge within
 * half a pixel on either side, straight between. `distancePx` is asked only where the line can be, as in `cutRaster`.
 */
export function coverRow(distancePx: DistancePx, y: number, row: Uint8Array): void {
  for (let x = 0; x < row.length; ) {
    const distance = distancePx(x + 0.5, y + 0.5);
    const coverage = Math.round(Math.min(1, Math.max(0, distance + HALF_PX)) * 255);
    const end = Math.min(row.length, x + Math.max(1, Math.floor(Math.abs(distance) + HALF_PX)));
    if (coverage === 0 || coverage === 255) row.fill(coverage, x, end);
    else row[x] = coverage;
    x = coverage === 0 || coverage === 255 ? end : x + 1;
  }
}
