import type { Drawing } from '../../geometry/drawing.ts';
import { growLaid, type LaidSector, laySector } from '../../geometry/laid-sector.ts';
import { MM_PER_INCH } from '../../geometry/length.ts';
import { middleOf, type RectMm } from '../../geometry/rectangle.ts';
import { moveDrawing, moveRect, type QuarterTurn } from '../../geometry/rigid-move.ts';
import { layMarks } from '../marks/lay-marks.ts';
import type { PagePlan, PiecePlace } from '../page-plan.ts';
import { pageOnPaper } from '../plan-page.ts';
import type { FilledPage, PackedPiece } from './pack-groups.ts';
import type { SheetsRequest } from './page-ways.ts';
import type { SheetPiece, SheetsOptions } from './sheet-piece.ts';

/** The page that a way of packing has filled, with its marks. */
export function planFullPage(
  pieces: readonly SheetPiece[],
  { members, nestGapMm, way: { page, scaleCorrection } }: FilledPage,
  { paper, ppi }: SheetsRequest,
  { driverMirrors, without }: SheetsOptions,
): PagePlan {
  const onPaper = pageOnPaper(page, { ppi, scaleCorrection });
  const places = members.map((member) =>
    placeOf(pieces[member.piece]!, member, { ppi, ...onPaper }, nestGapMm),
  );
  const marks = layMarks({
    pageMm: onPaper.sizeMm,
    printableMm: onPaper.printableMm,
    pieces: places.map(({ outlineMm, bleedMm, turn, arcMm }, at) => {
      const piece = pieces[members[at]!.piece]!;
      const { mirrored, label } = piece;
      const roll = piece.roll && { ...piece.roll, lines: linesOnPaper(piece, turn, bleedMm) };
      return { outlineMm, bleedMm, turn, mirrored, label, ...(roll && { roll }), ...(arcMm && { arcMm }) };
    }),
    driverMirrors,
    ...(without && { without }),
  });
  return {
    paper: paper.id,
    orientation: page.orientation,
    ...onPaper,
    ppi,
    densityPpi: { x: ppi / scaleCorrection.x, y: ppi / scaleCorrection.y },
    pieces: driverMirrors ? places.map((place) => asSent(place, onPaper.widthPx)) : places.map(bare),
    marks,
  };
}

interface PlaceOnPaper extends PiecePlace {
  readonly widthPx: number;
  readonly arcMm?: LaidSector | undefined;
}

/**
 * Of the gap: so much more than its bleed is painted of an arc, for its rim lies between pixels. What is grown reaches
 * sqrt(1 + 2 * 2) times as far out at most, at a corner of the outer arc, since angles grow by the length at mid height:
 * under 0.6 of the gap, so that all ink of the next stays; each picture may be 3/4 of a pixel off its place.
 */
const BESIDE_SHARE = 1 / 4;

function placeOf(
  piece: SheetPiece,
  { turn, middleMm }: PackedPiece,
  page: Pick<PagePlan, 'ppi' | 'widthPx' | 'heightPx'>,
  nestGapMm?: number,
): PlaceOnPaper {
  const lying = turn === 90;
  const widthPx = lying ? piece.heightPx : piece.widthPx;
  const heightPx = lying ? piece.widthPx : piece.heightPx;
  const corner = (middle: number, sizePx: number, pagePx: number) =>
    Math.max(0, Math.min(pagePx - sizePx, Math.round((middle * page.ppi) / MM_PER_INCH - sizePx / 2)));
  const xPx = corner(middleMm.x, widthPx, page.widthPx);
  const yPx = corner(middleMm.y, heightPx, page.heightPx);
  // A picture of whole pixels is off by half of one at most; in a PDF it is not.
  const { bleedMm, mirrored } = piece;
  const about = (box: RectMm): RectMm => {
    const fromMiddle = {
      ...box,
      x: box.x - bleedMm.x - bleedMm.width / 2,
      y: box.y - bleedMm.y - bleedMm.height / 2,
    };
    return moveRect(fromMiddle, { mirrored, turn, by: middleMm });
  };
  const place = { xPx, yPx, widthPx, turn, bleedMm: about(bleedMm), outlineMm: about(piece.outlineMm) };
  if (nestGapMm === undefined || !piece.arc) return place;
  const arcMm = laySector(piece.arc, place.bleedMm);
  return { ...place, arcMm, partMm: growLaid(arcMm, nestGapMm * BESIDE_SHARE) };
}

/** The lines of a piece whose bleed's box lies at `onPaperMm`. */
function linesOnPaper(
  { roll, bleedMm, mirrored }: SheetPiece,
  turn: QuarterTurn,
  onPaperMm: RectMm,
): Drawing {
  const { x, y } = middleOf(bleedMm);
  const aboutMiddle = moveDrawing(roll?.lines ?? [], { by: { x: -x, y: -y } });
  return moveDrawing(aboutMiddle, { mirrored, turn, by: middleOf(onPaperMm) });
}

/** On a page that its driver mirrors. */
function asSent(place: PlaceOnPaper, pageWidthPx: number): PiecePlace {
  return { ...bare(place), xPx: pageWidthPx - place.xPx - place.widthPx };
}

function bare({ xPx, yPx, turn, outlineMm, bleedMm, partMm }: PlaceOnPaper): PiecePlace {
  return { xPx, yPx, turn, outlineMm, bleedMm, ...(partMm && { partMm }) };
}
