import { isBare, type MarkKind } from '../marks/mark-kinds.ts';
import type { Steps } from '../steps.ts';
import { type FilledPage, type PackedGroups, packGroups, packOnOnePage } from './pack-groups.ts';
import {
  listPageWays,
  ROOM_FOR_EDGES,
  ROOM_FOR_MORE,
  ROOM_FOR_NONE,
  type SheetsRequest,
} from './page-ways.ts';
import type { SheetPiece } from './sheet-piece.ts';

/**
 * Groups on as little of a roll as the packing finds, in one page where that is not too long. Room is kept for the marks
 * along the edges, for more of them only where that makes no page longer.
 */
export function* packRoll(
  pieces: readonly SheetPiece[],
  request: SheetsRequest,
  without?: readonly MarkKind[],
): Steps<PackedGroups> {
  const rooms = isBare(without) ? ROOM_FOR_NONE : [...ROOM_FOR_EDGES, ...ROOM_FOR_NONE];
  const packed = yield* packGroups(pieces, listPageWays(request, { rooms }));
  const pages: FilledPage[] = [];
  for (const page of packed.pages) pages.push(yield* shorten(pieces, page, request));
  return { ...packed, pages };
}

/** Halving ends where it would save less than this part of the page, or a millimetre. */
const FINE_ENOUGH = 1 / 400;

/**
 * The same pieces on the shortest page that halving finds, in whole millimetres. What packs on a page need not pack on
 * every longer one, so the first try is the length that their area alone would need: sets that fill a page are seen there.
 */
function* shorten(
  pieces: readonly SheetPiece[],
  page: FilledPage,
  request: SheetsRequest,
): Steps<FilledPage> {
  const packAt = (alongMm: number, ways: Parameters<typeof listPageWays>[1]) =>
    packOnOnePage(pieces, page.items, listPageWays(request, { alongMm, ...ways }));
  const rooms = [page.way.room];
  let best = page;
  let tooShort = Math.floor(lengthForArea(pieces, best));
  let next = tooShort + 1;
  while (next < lengthOf(best)) {
    const found = yield* packAt(next, { rooms });
    if (found) best = found;
    else tooShort = next;
    const betweenMm = lengthOf(best) - tooShort;
    if (betweenMm < FINE_ENOUGH * lengthOf(best)) break;
    next = Math.ceil(tooShort + betweenMm / 2);
  }
  return (yield* packAt(lengthOf(best), { rooms: ROOM_FOR_MORE })) ?? best;
}

function lengthOf({ way }: FilledPage): number {
  const { orientation, sizeMm } = way.page;
  return orientation === 'portrait' ? sizeMm.height : sizeMm.width;
}

/** Of a page that is as full as can be: every piece takes its gutter along, on one side of each axis. */
function lengthForArea(pieces: readonly SheetPiece[], page: FilledPage): number {
  const { grain, page: shape, scaleCorrection } = page.way;
  const { room, gutter, unitMm } = grain;
  let area = 0;
  for (const { piece, turn } of page.members) {
    const { width, height } = grain.sizeOf(pieces[piece]!, turn);
    area += (width + gutter) * (height + gutter);
  }
  const upright = shape.orientation === 'portrait';
  const [across, along] = upright ? [room.width, room.height] : [room.height, room.width];
  const spare = along + gutter - area / (across + gutter);
  return lengthOf(page) - spare * unitMm * (upright ? scaleCorrection.y : scaleCorrection.x);
}
