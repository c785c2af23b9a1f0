import { MM_PER_INCH } from '../../geometry/length.ts';
import { findNestingPitch } from '../../geometry/nest-sectors.ts';
import type { Sector } from '../../geometry/sector.ts';
import { isBare, type MarkKind } from '../marks/mark-kinds.ts';
import type { Arrangement } from './arrange-group.ts';
import { type FilledPage, placeOnPage } from './pack-groups.ts';
import {
  listPageWays,
  type PageWay,
  ROOM_FOR_EDGES,
  ROOM_FOR_MORE,
  ROOM_FOR_NONE,
  type SheetsRequest,
} from './page-ways.ts';
import type { SheetPiece } from './sheet-piece.ts';

/** Arcs are never nearer, whatever the gutter: pictures have whole pixels, and what is painted of one is not cut to a hair. */
const LEAST_GAP_PX = 6;

type Pages = readonly FilledPage[];

/**
 * Equal arcs in columns, each in the hollow of the next, columns side by side; on as few pages as the ways allow, of a
 * roll the shortest, of ways as good the first. null where pieces are not equal arcs, are kept together, or fit no way.
 * Upright only: a page held the other way is the same as arcs that are turned.
 */
export function nestArcs(
  pieces: readonly SheetPiece[],
  request: SheetsRequest,
  without?: readonly MarkKind[],
): Pages | null {
  const arc = findCommonArc(pieces);
  if (!arc) return null;
  // Of a roll, room for marks along its edges is kept, and for more of them only where no page becomes longer.
  const rooms = isBare(without) ? ROOM_FOR_NONE : [...ROOM_FOR_MORE, ...ROOM_FOR_EDGES];
  let best: Pages | null = null;
  for (const way of listPageWays(request, request.paper.heightMm === null ? { rooms } : {})) {
    const pages = nestOneWay(pieces, arc, way, (LEAST_GAP_PX * MM_PER_INCH) / request.ppi);
    if (pages) best = best ? fewer(best, pages) : pages;
  }
  return best;
}

/** What needs fewer pages, or as many of less paper; the first where both need the same. */
export function fewer(one: Pages, other: Pages | null): Pages {
  if (!other || other.length > one.length) return one;
  return other.length < one.length || areaOf(other) < areaOf(one) ? other : one;
}

function areaOf(pages: Pages): number {
  return pages.reduce((sum, { way: { page } }) => sum + page.sizeMm.width * page.sizeMm.height, 0);
}

/** null where one is no arc, differs, or belongs to another. */
function findCommonArc(pieces: readonly SheetPiece[]): Sector | null {
  const arc = pieces[0]?.arc;
  if (!arc || new Set(pieces.map(({ group }) => group)).size < pieces.length) return null;
  const { widthPx, heightPx } = pieces[0]!;
  const isEqual = (piece: SheetPiece) =>
    piece.widthPx === widthPx &&
    piece.heightPx === heightPx &&
    piece.arc?.outerRadiusMm === arc.outerRadiusMm &&
    piece.arc.innerRadiusMm === arc.innerRadiusMm &&
    piece.arc.angleRad === arc.angleRad &&
    piece.arc.opens === arc.opens;
  return pieces.every(isEqual) ? arc : null;
}

function nestOneWay(
  pieces: readonly SheetPiece[],
  arc: Sector,
  way: PageWay,
  leastGapMm: number,
): Pages | null {
  const { room, gutter, unitMm } = way.grain;
  const { width, height } = way.grain.sizeOf(pieces[0]!, 0);
  const nestGapMm = Math.max(leastGapMm, gutter * unitMm);
  const pitch = Math.ceil(findNestingPitch(arc, nestGapMm) / unitMm);
  const mostColumns = Math.floor((room.width + gutter) / (width + gutter));
  const mostRows = height > room.height ? 0 : 1 + Math.floor((room.height - height) / pitch);
  const perPage = mostColumns * mostRows;
  if (perPage === 0) return null;
  const upright = way.page.orientation === 'portrait';
  return Array.from({ length: Math.ceil(pieces.length / perPage) }, (_, page) => {
    const first = page * perPage;
    const count = Math.min(perPage, pieces.length - first);
    // As little as can be of what a roll is cut along.
    const fewestRows = Math.ceil(count / mostColumns);
    const columns = upright ? Math.ceil(count / fewestRows) : Math.ceil(count / mostRows);
    const nest: Arrangement = {
      width: columns * (width + gutter) - gutter,
      height: height + (Math.ceil(count / columns) - 1) * pitch,
      members: Array.from({ length: count }, (_, i) => ({
        piece: first + i,
        turn: 0,
        x: (i % columns) * (width + gutter) + width / 2,
        y: Math.floor(i / columns) * pitch + height / 2,
      })),
    };
    return { ...placeOnPage([{ ...nest, x: 0, y: 0 }], way), nestGapMm };
  });
}
