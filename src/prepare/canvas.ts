import { BlankcheckError } from '../blankcheck-error.ts';
import { LIMITS } from '../formats/limits.ts';
import { formatSize, MM_PER_INCH } from '../geometry/length.ts';
import { middleOf, type PointMm, type PointPx, type RectMm, type RectPx } from '../geometry/rectangle.ts';
import type { Job } from '../job/job.ts';
import { bleedBoxOf } from '../job/lines.ts';

/** The print-ready picture: the box of the edge and its bleed on every side, seen from the front. */
export interface Canvas {
  readonly widthMm: number;
  readonly heightMm: number;
  readonly widthPx: number;
  readonly heightPx: number;
  readonly ppi: number;
  /** Middle of the edge's box, in mm from the top left of the outline box; it lies on the middle of the canvas. */
  readonly middleMm: PointMm;
}

/** For a tapered body it is that of the strip, which is bent afterwards. @throws BlankcheckError `print-too-large` */
export function canvasOf({ blank, ppi }: Pick<Job, 'blank' | 'ppi'>): Canvas {
  const { width: widthMm, height: heightMm } = bleedBoxOf(blank);
  const widthPx = Math.max(1, roundPx((widthMm / MM_PER_INCH) * ppi));
  const heightPx = Math.max(1, roundPx((heightMm / MM_PER_INCH) * ppi));
  checkPixels(widthPx, heightPx, `${formatSize(widthMm, heightMm)} at ${ppi} pixels per inch`);
  return { widthMm, heightMm, widthPx, heightPx, ppi, middleMm: middleOf(blank.edge.box) };
}

/**
 * Where a rectangle in mm lies on the canvas, at least 1 x 1: of its rounded size where that leaves no edge off by
 * more than half a pixel (so that a picture of just that size is copied), else with each edge rounded by itself.
 */
export function rectOnCanvas(canvas: Canvas, rect: RectMm): RectPx {
  const from = pointOnCanvas(canvas, rect);
  const to = pointOnCanvas(canvas, { x: rect.x + rect.width, y: rect.y + rect.height });
  const across = roundSpan(from.x, to.x);
  const down = roundSpan(from.y, to.y);
  return { x: across.start, y: down.start, width: across.size, height: down.size };
}

function roundSpan(from: number, to: number): { readonly start: number; readonly size: number } {
  const size = Math.max(1, roundPx(to - from));
  // Both edges are within half a pixel for starts from the later of two bounds to the earlier of two others.
  const start = Math.ceil(Math.max(from, to - size) - 0.5 - NUDGE_PX);
  if (start <= Math.min(from, to - size) + 0.5 + NUDGE_PX) {
    const nearest = roundPx((from + to - size) / 2);
    return {
      size,
      start: Math.min(Math.max(nearest, start), Math.floor(Math.min(from, to - size) + 0.5 + NUDGE_PX)),
    };
  }
  return { start: roundPx(from), size: Math.max(1, roundPx(to) - roundPx(from)) };
}

/** All that the canvas shows, in mm: its size in whole pixels, so up to half a pixel more or less than asked for. */
export function extentMm({ widthPx, heightPx, ppi, middleMm }: Canvas): RectMm {
  const width = (widthPx / ppi) * MM_PER_INCH;
  const height = (heightPx / ppi) * MM_PER_INCH;
  return { x: middleMm.x - width / 2, y: middleMm.y - height / 2, width, height };
}

/** @throws BlankcheckError `print-too-large` when a picture of this size may not be made; `what` says what asks for it. */
export function checkPixels(widthPx: number, heightPx: number, what: string): void {
  const most = LIMITS.maxCanvasPixels.value;
  if (widthPx * heightPx <= most) return;
  throw new BlankcheckError(
    'print-too-large',
    `Expected at most ${most} pixels for the print-ready picture, but ${what} needs ${widthPx} x ${heightPx}. Ask for a smaller size or fewer pixels per inch (--ppi).`,
  );
}

function pointOnCanvas({ widthPx, heightPx, ppi, middleMm }: Canvas, { x, y }: PointMm): PointPx {
  return {
    x: widthPx / 2 + ((x - middleMm.x) / MM_PER_INCH) * ppi,
    y: heightPx / 2 + ((y - middleMm.y) / MM_PER_INCH) * ppi,
  };
}

/** Doubles may miss a half by their last digits: the nudge rounds both edges of such a rectangle the same way. */
const NUDGE_PX = 1e-6;

function roundPx(px: number): number {
  return Math.floor(px + 0.5 + NUDGE_PX);
}
