import { drawMarksOver, type Resolution } from '../../src/formats/draw-marks.ts';
import type { DrawAt } from '../../src/formats/draw-sized-svg.ts';
import type { Limits } from '../../src/formats/limits.ts';
import type { Drawing } from '../../src/geometry/drawing.ts';
import { createRaster, type Raster } from '../../src/raster/raster.ts';

/** A drawing over nothing: 8-bit sRGB with alpha. */
export async function drawMarks(
  drawing: Drawing,
  { widthPx, heightPx }: DrawAt,
  ppi: Resolution,
  limits: Limits,
): Promise<Raster> {
  const clear = createRaster({ widthPx, heightPx, model: 'rgb', hasAlpha: true, depth: 8 });
  return drawMarksOver(clear, drawing, ppi, limits);
}
