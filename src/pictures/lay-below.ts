import type { Raster } from '../raster/raster.ts';

/** Writes an opaque 8-bit rgb picture over the last rows of one that is as wide and has alpha, in its own memory. */
export function layBelow(raster: Raster, below: Raster): void {
  const first = raster.data.length - below.widthPx * below.heightPx * 4;
  for (let from = 0, to = first; from < below.data.length; from += 3, to += 4) {
    raster.data[to] = below.data[from]!;
    raster.data[to + 1] = below.data[from + 1]!;
    raster.data[to + 2] = below.data[from + 2]!;
    raster.data[to + 3] = 255;
  }
}
