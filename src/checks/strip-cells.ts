import type { RectMm } from '../geometry/rectangle.ts';
import type { Job } from '../job/job.ts';
import { channelsOf, fullScaleOf } from '../raster/raster.ts';
import type { PrintPicture } from './define-check.ts';

/** A cell of the strip of a round body as it is printed: mean device colour over white, 0…1 a channel, and the spread of its lightest channel. */
export interface StripCell {
  readonly colour: readonly number[];
  /** Largest less smallest green (or gray) within the cell, 0…1. */
  readonly spread: number;
  readonly visible: boolean;
}

/** Side of a cell, mm. */
export const CELL_MM = 1;

/**
 * Reads cells of the strip, repeats of the art included: the first picture that lies on a cell's middle is read; null
 * where none does, which is bare.
 */
export function makeCellReader(
  { placementMm, copiesMm }: Job,
  { raster, originMm, pixelMm }: PrintPicture,
): (boxMm: RectMm) => StripCell | null {
  const { widthPx, heightPx, data, hasAlpha } = raster;
  const channels = channelsOf(raster);
  const colours = hasAlpha ? channels - 1 : channels;
  const full = fullScaleOf(raster);
  const key = colours > 1 ? 1 : 0;
  const toPx = (mm: number, origin: number) => Math.round((mm - origin) / pixelMm);
  return (box) => {
    const middleX = box.x + box.width / 2;
    const shift = [0, ...copiesMm].find(
      (mm) => middleX >= placementMm.x + mm && middleX < placementMm.x + placementMm.width + mm,
    );
    if (shift === undefined) return null;
    const left = Math.max(0, toPx(box.x - shift, originMm.x));
    const right = Math.min(widthPx, Math.max(left + 1, toPx(box.x + box.width - shift, originMm.x)));
    const top = Math.max(0, toPx(box.y, originMm.y));
    const bottom = Math.min(heightPx, toPx(box.y + box.height, originMm.y));
    if (right <= left || bottom <= top) return null;
    const sums = new Float64Array(colours);
    let [least, most, visible] = [Infinity, -Infinity, false];
    for (let y = top; y < bottom; y += 1)
      for (let x = left; x < right; x += 1) {
        const at = (y * widthPx + x) * channels;
        const alpha = hasAlpha ? data[at + colours]! / full : 1;
        if (alpha > 0) visible = true;
        for (let i = 0; i < colours; i += 1) sums[i]! += (data[at + i]! / full) * alpha + 1 - alpha;
        const level = (data[at + key]! / full) * alpha + 1 - alpha;
        least = Math.min(least, level);
        most = Math.max(most, level);
      }
    const pixels = (right - left) * (bottom - top);
    return { colour: Array.from(sums, (sum) => sum / pixels), spread: most - least, visible };
  };
}
