import { MM_PER_INCH } from '../geometry/length.ts';
import { middleOf, type PointMm, type PointPx, type RectPx } from '../geometry/rectangle.ts';
import type { Shape } from '../geometry/shape.ts';
import { distanceInside } from '../geometry/signed-distance.ts';
import type { BlankInHand } from '../job/job.ts';
import type { PrintPlan } from '../prepare/step.ts';
import type { DistancePx } from '../raster/cut.ts';

/** Where the blank stands in its proof. Pixels are those of the print-ready picture, so that none is moved. */
export interface ProofFrame {
  /** Of the part that shows the blank: the outline and clear pixels round it. */
  readonly widthPx: number;
  readonly heightPx: number;
  /** Whole pixels that hold the outline. */
  readonly blankPx: RectPx;
  /** Top left corner of the proof in the print-ready picture as seen from the front; may be negative. */
  readonly onPrintPx: PointPx;
  /** The same corner in mm, from the top left of the outline box. */
  readonly originMm: PointMm;
  readonly ppi: number;
}

/** Clear pixels beside the outline (own choice). */
export const MARGIN_MM = 3;

/** `leastWidthPx` is what the caption needs; a narrower blank stands in the middle of it. */
export function frameProof(
  { outline, edge }: Pick<BlankInHand, 'outline' | 'edge'>,
  { ppi, widthPx, heightPx }: Pick<PrintPlan, 'ppi' | 'widthPx' | 'heightPx'>,
  leastWidthPx: number,
): ProofFrame {
  const middle = middleOf(edge.box);
  const toPx = (mm: number, middleMm: number, sizePx: number) =>
    sizePx / 2 + ((mm - middleMm) / MM_PER_INCH) * ppi;
  const { x, y, width, height } = outline.box;
  const left = floorPx(toPx(x, middle.x, widthPx));
  const top = floorPx(toPx(y, middle.y, heightPx));
  const right = ceilPx(toPx(x + width, middle.x, widthPx));
  const bottom = ceilPx(toPx(y + height, middle.y, heightPx));
  const margin = Math.max(1, Math.round((MARGIN_MM / MM_PER_INCH) * ppi));
  const beside = Math.max(margin, Math.ceil((leastWidthPx - (right - left)) / 2));
  const onPrintPx = { x: left - beside, y: top - margin };
  const toMm = (px: number, middleMm: number, sizePx: number) =>
    middleMm + ((px - sizePx / 2) / ppi) * MM_PER_INCH;
  return {
    widthPx: right - left + 2 * beside,
    heightPx: bottom - top + 2 * margin,
    blankPx: { x: beside, y: margin, width: right - left, height: bottom - top },
    onPrintPx,
    originMm: { x: toMm(onPrintPx.x, middle.x, widthPx), y: toMm(onPrintPx.y, middle.y, heightPx) },
    ppi,
  };
}

/** How far a pixel of the proof lies within a shape on the blank. */
export function distanceInProof(shape: Shape, { originMm, ppi }: ProofFrame): DistancePx {
  const mmPerPx = MM_PER_INCH / ppi;
  return (x, y) => distanceInside(shape, originMm.x + x * mmPerPx, originMm.y + y * mmPerPx) / mmPerPx;
}

/** Doubles may miss a whole number by their last digits, which must not cost a pixel. */
const NUDGE_PX = 1e-6;

function floorPx(px: number): number {
  return Math.floor(px + NUDGE_PX);
}

function ceilPx(px: number): number {
  return Math.ceil(px - NUDGE_PX);
}
