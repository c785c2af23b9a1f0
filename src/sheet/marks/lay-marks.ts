import { moveDrawing } from '../../geometry/rigid-move.ts';
import { distanceBetween, findNearest } from './distance-between.ts';
import { nozzleBars, stepWedge } from './ink-checks.ts';
import { layLabels } from './lay-labels.ts';
import { extendTicks, layCentreTicks, layCornerMarks, reserveCorners } from './lay-piece-lines.ts';
import { layRollLines } from './lay-roll-lines.ts';
import { bothWays, inTurn, standBlock } from './mark-block.ts';
import type { MarkKind } from './mark-kinds.ts';
import { MarkPage } from './mark-page.ts';
import type { MarkedPage, MarkRequest } from './mark-request.ts';
import { mirrorWitness } from './mirror-witness.ts';
import { rulerVariants } from './ruler.ts';
import { upArrow } from './up-arrow.ts';

/**
 * The marks of a page. None touches a piece's bleed or another mark, all lie in the printable part; each finds its room
 * in the order of `MARK_KINDS`, and what finds none is named. The same request gives the same marks.
 */
export function layMarks(request: MarkRequest): MarkedPage {
  const page = new MarkPage(request);
  const wanted = (mark: MarkKind) => !request.without?.includes(mark);
  if (wanted('roll-lines')) layRollLines(page, request);
  const ticks = wanted('centre-ticks') ? layCentreTicks(page, request) : [];
  if (wanted('corner-marks')) reserveCorners(page, request);
  if (wanted('ruler')) layRulers(page, request);
  if (wanted('mirror-witness')) layWitnesses(page, request);
  if (wanted('label')) layLabels(page, request);
  if (wanted('up-arrow')) layArrows(page, request);
  if (wanted('corner-marks')) layCornerMarks(page, request);
  const { x, y, width, height } = request.printableMm;
  const nearRightFoot = (place: { x: number; y: number; width: number; height: number }) =>
    3 * (y + height - place.y - place.height) + (x + width - place.x - place.width);
  if (wanted('nozzle-bars')) page.place({ mark: 'nozzle-bars' }, NOZZLE_BARS, nearRightFoot);
  if (wanted('step-wedge')) page.place({ mark: 'step-wedge' }, STEP_WEDGE, nearRightFoot);
  extendTicks(page, request, ticks);
  const { items, shown, dropped } = page.finish();
  const drawing = request.driverMirrors
    ? moveDrawing(items, { mirrored: true, by: { x: request.pageMm.width, y: 0 } })
    : items;
  return { drawing, shown, dropped };
}

// The same on every page: drawn once.
const [LYING_RULERS, STANDING_RULERS] = [
  inTurn(rulerVariants()),
  inTurn(rulerVariants().map((make) => () => standBlock(make()))),
];
const WITNESSES = new Map(
  [true, false].map((mirrored) => [
    mirrored,
    bothWays([() => mirrorWitness(mirrored), () => mirrorWitness(mirrored, 'small')]),
  ]),
);
const [NOZZLE_BARS, STEP_WEDGE] = [bothWays([nozzleBars]), bothWays([stepWedge])];

/** Side by side with the edges of the page: one along its foot, one up its left side. */
function layRulers(page: MarkPage, { printableMm: { x, y, height } }: MarkRequest): void {
  page.place(
    { mark: 'ruler', axis: 'x' },
    LYING_RULERS,
    (place) => 3 * (y + height - place.y - place.height) + place.x - x,
  );
  page.place(
    { mark: 'ruler', axis: 'y' },
    STANDING_RULERS,
    (place) => 3 * (place.x - x) + (y + height - place.y - place.height),
  );
}

/** One for art that is mirrored, one for art that is not, as far as there is such art on the page. */
function layWitnesses(page: MarkPage, { pieces, printableMm: { x, y } }: MarkRequest): void {
  for (const mirrored of [true, false]) {
    if (!pieces.some((piece) => piece.mirrored === mirrored)) continue;
    page.place(
      { mark: 'mirror-witness' },
      WITNESSES.get(mirrored)!,
      (place) => 3 * (place.y - y) + place.x - x,
    );
  }
}

/** One for the page where all pieces lie alike; else one for each piece, close to it. */
function layArrows(page: MarkPage, { pieces }: MarkRequest): void {
  const [first] = pieces;
  if (!first) return;
  const bleeds = pieces.map(({ bleedMm }) => bleedMm);
  if (pieces.every(({ turn }) => turn === first.turn)) {
    page.place({ mark: 'up-arrow' }, [upArrow(first.turn)], (place) => findNearest(bleeds, place));
    return;
  }
  pieces.forEach(({ turn, bleedMm }, piece) => {
    page.place({ mark: 'up-arrow', piece }, [upArrow(turn)], (place) => {
      const distance = distanceBetween(bleedMm, place);
      return distance <= NEAR_MM ? distance : Infinity;
    });
  });
}

/** Further away, nobody would know whose it is. */
const NEAR_MM = 6;
