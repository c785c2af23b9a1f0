import type { MarkPage } from './mark-page.ts';
import type { MarkRequest, PageSide } from './mark-request.ts';
import { BLEED_GAP_MM, MARK_GAP_MM } from './mark-style.ts';
import { centreTick, cornerStrokes, roomOutside, SIDES, tickExtension } from './piece-lines.ts';

const TICK_LENGTHS_MM = [10, 9, 8, 7, 6, 5] as const;
const [LONGEST_MM, SHORTEST_MM] = [10, 5];

/** Ticks that are shown at their full length: they may go on. */
export type FullTicks = readonly { readonly piece: number; readonly side: PageSide }[];

/** As long as there is room, 5 to 10 mm. */
export function layCentreTicks(page: MarkPage, { pieces }: MarkRequest): FullTicks {
  const full: { piece: number; side: PageSide }[] = [];
  pieces.forEach((piece, i) => {
    for (const side of piece.roll?.isArc ? [] : SIDES) {
      const name = { mark: 'centre-ticks', piece: i, side } as const;
      const lengthMm = TICK_LENGTHS_MM.find((length) =>
        page.isFree(centreTick(piece, side, length).boxMm, BLEED_GAP_MM),
      );
      if (lengthMm === undefined) page.drop(name);
      else page.show(name, centreTick(piece, side, lengthMm));
      if (lengthMm === LONGEST_MM) full.push({ piece: i, side });
    }
  });
  return full;
}

/** On to the edge of the printable part where nothing is in the way: to be folded, cut or seen further out. */
export function extendTicks(page: MarkPage, { pieces, printableMm }: MarkRequest, ticks: FullTicks): void {
  for (const { piece: i, side } of ticks) {
    const piece = pieces[i]!;
    const fromMm = BLEED_GAP_MM + LONGEST_MM + MARK_GAP_MM;
    const endMm = roomOutside(piece, side, printableMm);
    if (endMm < fromMm + SHORTEST_MM) continue;
    const line = tickExtension(piece, side, fromMm, endMm);
    if (page.isFree(line.boxMm, BLEED_GAP_MM)) page.show({ mark: 'centre-ticks', piece: i, side }, line);
  }
}

export function reserveCorners(page: MarkPage, { pieces }: MarkRequest): void {
  for (const piece of pieces)
    for (const side of piece.roll?.isArc ? [] : SIDES)
      for (const stroke of cornerStrokes(piece, side))
        if (page.isFree(stroke.boxMm, BLEED_GAP_MM)) page.reserve(stroke);
}

/** Stroke by stroke: a side where one has no room is named once. */
export function layCornerMarks(page: MarkPage, { pieces }: MarkRequest): void {
  pieces.forEach((piece, i) => {
    for (const side of piece.roll?.isArc ? [] : SIDES) {
      const name = { mark: 'corner-marks', piece: i, side } as const;
      const strokes = cornerStrokes(piece, side);
      const free = strokes.filter(({ boxMm }) => page.isFree(boxMm, BLEED_GAP_MM));
      for (const stroke of free) page.show(name, stroke);
      if (free.length < strokes.length) page.drop(name);
    }
  });
}
