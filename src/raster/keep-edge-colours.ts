import type { RectPx } from '../geometry/rectangle.ts';
import { createColourMean, createColourRange } from './edge-colour.ts';
import { visitEdgeRuns } from './edge-runs.ts';
import { channelsOf, fullScaleOf, type Raster } from './raster.ts';

/** How far a cubic kernel reaches, in pixels of the coarser of source and output. */
const KERNEL_REACH = 2;

/**
 * Sets the colours of a resampled picture right wherever alpha is less than full within the kernel's reach. Changes
 * and returns `resampled`, which was made from the rectangle of `source`; alpha stays as it is, save that a pixel
 * with no visible source pixel near it becomes clear.
 *
 * Why: a kernel that sharpens overshoots at the edge of the art, and clipped each by itself, premultiplied colour
 * and alpha lose their ratio. That draws a bright line just inside the edge; there (full alpha) the mean is taken
 * anew. On the edge (less alpha), few steps are left for colour; there it is held within what the art shows at that
 * place. So flat colours stay exact, and over any background no edge of theirs can have a halo.
 */
export function keepEdgeColours(resampled: Raster, source: Raster, rectPx: RectPx): Raster {
  if (!resampled.hasAlpha) return resampled;
  const { data, widthPx, heightPx } = resampled;
  const channels = channelsOf(resampled);
  const full = fullScaleOf(resampled);
  const takeMean = createColourMean(source, rectPx, widthPx, heightPx);
  const holdRange = createColourRange(source, rectPx, widthPx, heightPx);
  const reach = (sourcePx: number, outputPx: number) =>
    Math.ceil(KERNEL_REACH * Math.max(1, outputPx / sourcePx));
  visitEdgeRuns(resampled, reach(rectPx.width, widthPx), reach(rectPx.height, heightPx), (y, start, end) => {
    for (let x = start, pixel = (y * widthPx + start) * channels; x < end; x++, pixel += channels) {
      const alpha = data[pixel + channels - 1]!;
      if (alpha === full) takeMean(x, y, data, pixel);
      else if (alpha > 0) holdRange(x, y, data, pixel);
    }
  });
  return resampled;
}
