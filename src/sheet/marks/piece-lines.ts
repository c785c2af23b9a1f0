import type { DrawnItem } from '../../geometry/drawing.ts';
import { findItemBounds } from '../../geometry/drawing-bounds.ts';
import { distanceToSector, type LaidSector } from '../../geometry/laid-sector.ts';
import { middleOf, type PointMm, type RectMm } from '../../geometry/rectangle.ts';
import type { MarkedPiece, PageSide } from './mark-request.ts';
import { BLACK, BLEED_GAP_MM, LINE_MM } from './mark-style.ts';

/** A line that stands square to one side of a piece, outside its bleed. */
export interface PieceLine {
  readonly side: PageSide;
  readonly item: DrawnItem;
  readonly boxMm: RectMm;
}

export const SIDES: readonly PageSide[] = ['top', 'right', 'bottom', 'left'];

/** A tick at the middle of a side of the outline: to be folded over the blank's edge, or seen from behind. */
export function centreTick(piece: MarkedPiece, side: PageSide, lengthMm: number): PieceLine {
  const { x, y } = middleOf(piece.outlineMm);
  return lineOutward(piece, side, side === 'top' || side === 'bottom' ? x : y, BLEED_GAP_MM, lengthMm);
}

/** Goes on from a tick to `endMm` outside the bleed, thin and dashed. */
export function tickExtension(piece: MarkedPiece, side: PageSide, fromMm: number, endMm: number): PieceLine {
  const { x, y } = middleOf(piece.outlineMm);
  const along = side === 'top' || side === 'bottom' ? x : y;
  return lineOutward(piece, side, along, fromMm, endMm - fromMm, true);
}

const CORNER_MM = 5;

/** Both strokes on one side, in line with the outline's edges beside it: two sides together are the L of a corner. */
export function cornerStrokes(piece: MarkedPiece, side: PageSide): readonly PieceLine[] {
  const { x, y, width, height } = piece.outlineMm;
  const ends = side === 'top' || side === 'bottom' ? [x, x + width] : [y, y + height];
  return ends.map((along) => lineOutward(piece, side, along, BLEED_GAP_MM, CORNER_MM));
}

function lineOutward(
  { bleedMm }: MarkedPiece,
  side: PageSide,
  along: number,
  startMm: number,
  lengthMm: number,
  thin = false,
): PieceLine {
  const at = (outMm: number): PointMm => {
    if (side === 'top') return { x: along, y: bleedMm.y - outMm };
    if (side === 'bottom') return { x: along, y: bleedMm.y + bleedMm.height + outMm };
    if (side === 'left') return { x: bleedMm.x - outMm, y: along };
    return { x: bleedMm.x + bleedMm.width + outMm, y: along };
  };
  const item: DrawnItem = {
    kind: 'line',
    from: at(startMm),
    to: at(startMm + lengthMm),
    widthMm: thin ? LINE_MM / 2 : LINE_MM,
    colour: BLACK,
    ...(thin && { dashesMm: [1.5, 1.5] }),
  };
  return { side, item, boxMm: findItemBounds(item)! };
}

/** How far the printable part goes on outside a side of the bleed; negative where the bleed reaches over it. */
export function roomOutside({ bleedMm }: MarkedPiece, side: PageSide, printable: RectMm): number {
  if (side === 'top') return bleedMm.y - printable.y;
  if (side === 'left') return bleedMm.x - printable.x;
  if (side === 'right') return printable.x + printable.width - bleedMm.x - bleedMm.width;
  return printable.y + printable.height - bleedMm.y - bleedMm.height;
}

/** No line is looked at in longer steps than this. */
const LOOK_MM = 0.2;

/** Whether the ink of a line is at least this far from a sector. What may lie between two places that are looked at is taken off. */
export function isClearOf(
  sector: LaidSector,
  { from, to, widthMm }: Extract<DrawnItem, { kind: 'line' }>,
  gapMm: number,
): boolean {
  const steps = Math.max(1, Math.ceil(Math.hypot(to.x - from.x, to.y - from.y) / LOOK_MM));
  const leastMm = gapMm + widthMm / 2 + LOOK_MM / 2;
  return Array.from({ length: steps + 1 }, (_, i) => i / steps).every(
    (t) =>
      distanceToSector(sector, { x: from.x + t * (to.x - from.x), y: from.y + t * (to.y - from.y) }) >=
      leastMm,
  );
}
