import type { RectPx } from '../geometry/rectangle.ts';
import { frameOf, rectToMm, rectToPx, turnSize } from '../job/art-frame.ts';
import type { Job } from '../job/job.ts';
import { type Canvas, extentMm, rectOnCanvas } from './canvas.ts';

/** Which pixels of the artwork as displayed are printed, and where on the canvas they lie after the turn. */
export interface PlacedArt {
  readonly rectPx: RectPx;
  readonly onCanvasPx: RectPx;
}

/** How far beyond the canvas a pixel can still show in it, in output pixels: kernel 2, its prefilter 1, rounding 1. */
const REACH_PX = 4;

/**
 * The content box, less what overhangs the canvas so far that it cannot show: an overhang costs neither time nor
 * memory. Where the rounded size of the whole content box is its own size, no pixel is moved against another.
 */
export function placeOnCanvas(job: Job, canvas: Canvas): PlacedArt {
  const { contentBoxPx, placementMm, turn } = job;
  const rectPx = findShown(job, canvas);
  const turned = turnSize(contentBoxPx, turn);
  const whole = rectOnCanvas(canvas, placementMm);
  const partMm = rectToMm(frameOf(job), rectPx);
  if (whole.width !== turned.width || whole.height !== turned.height)
    return { rectPx, onCanvasPx: rectOnCanvas(canvas, partMm) };
  const alongX = (partMm.x - placementMm.x) / placementMm.width;
  const alongY = (partMm.y - placementMm.y) / placementMm.height;
  return {
    rectPx,
    onCanvasPx: {
      x: whole.x + Math.round(alongX * whole.width),
      y: whole.y + Math.round(alongY * whole.height),
      ...turnSize(rectPx, turn),
    },
  };
}

/** The part of the content box that can show on the canvas; at least one pixel of it, even where none can. */
function findShown(job: Job, canvas: Canvas): RectPx {
  const { contentBoxPx, turn, copiesMm } = job;
  // What overhangs at one end may show in a repeat at the other.
  if (copiesMm.length > 0) return contentBoxPx;
  const shown = rectToPx(frameOf(job), extentMm(canvas));
  const { width, height } = turnSize({ width: canvas.widthPx, height: canvas.heightPx }, turn);
  const across = clip(contentBoxPx.x, contentBoxPx.width, shown.x, shown.width, width);
  const down = clip(contentBoxPx.y, contentBoxPx.height, shown.y, shown.height, height);
  return { x: across.from, y: down.from, width: across.to - across.from, height: down.to - down.from };
}

/** One axis of the artwork: the span that is shown on `canvasPx` pixels, and as much more as bears on them, within the content. */
function clip(start: number, size: number, shownFrom: number, shownSize: number, canvasPx: number) {
  const reach = REACH_PX * Math.max(1, shownSize / canvasPx);
  const end = start + size;
  const from = Math.min(Math.max(Math.floor(shownFrom - reach), start), end - 1);
  const to = Math.max(Math.min(Math.ceil(shownFrom + shownSize + reach), end), from + 1);
  return { from, to };
}
