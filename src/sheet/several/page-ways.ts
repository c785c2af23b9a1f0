import { MM_PER_INCH } from '../../geometry/length.ts';
import type { RectMm } from '../../geometry/rectangle.ts';
import { type Page, pageOf } from '../fit-page.ts';
import type { Orientation, PageMargins, Paper, SizeMm } from '../paper.ts';
import { pageOnPaper } from '../plan-page.ts';
import { grainFor, type PackingGrain } from './packing-grain.ts';

/** What pages are filled with, and by what they are limited. */
export interface SheetsRequest {
  readonly paper: Paper;
  readonly margins: PageMargins;
  readonly ppi: number;
  /** At least this far from picture to picture. */
  readonly gutterMm: number;
  /** What the press takes at once, where whole pages are pressed; null where pieces are cut apart. */
  readonly platenMm: SizeMm | null;
  /** Intended / printed length across and along a portrait page as it is fed. */
  readonly scaleCorrection: { readonly scan: number; readonly feed: number };
}

/** A page held one way, and how much of it pieces may fill. */
export interface PageWay {
  readonly page: Page;
  readonly scaleCorrection: { readonly x: number; readonly y: number };
  readonly grain: PackingGrain;
  /** Where room is kept for marks, what pieces leave over is shared by all sides; else all of it is at the left and the top. */
  readonly spare: 'all-round' | 'left-and-top';
}

/**
 * What stays free at the sides of a page, and between two pieces, for marks: for ticks all round and, outside them, a
 * ruler at the foot and on the left, the mirror witness, label and arrow at the top; for these where ticks give way.
 * Between pieces: for a long tick of each; a long and a short one; one alone; none. Derived from the blocks of the marks; a test holds that they
 * find room.
 */
const ROOMS = [
  { sides: { top: 28, left: 27, bottom: 27, right: 14 }, gapMm: 26 },
  { sides: { top: 15, left: 14, bottom: 14, right: 0 }, gapMm: 21 },
  { sides: { top: 15, left: 14, bottom: 14, right: 0 }, gapMm: 10 },
  { sides: { top: 15, left: 14, bottom: 14, right: 0 }, gapMm: 0 },
  { sides: { top: 0, left: 0, bottom: 0, right: 0 }, gapMm: 0 },
] as const;

/**
 * The ways to fill a page, from roomy to tight; those that come first are taken where they need no more pages: room for
 * all marks, for ticks of every second side, for the marks at the edges only, and none for marks.
 */
export function listPageWays(request: SheetsRequest): readonly PageWay[] {
  return ROOMS.flatMap((room) =>
    (['portrait', 'landscape'] as const).map((held) => pageWay(request, held, room)),
  );
}

function pageWay(
  { paper, margins, ppi, platenMm, gutterMm: asked, scaleCorrection: { scan, feed } }: SheetsRequest,
  held: Orientation,
  { sides, gapMm }: (typeof ROOMS)[number],
): PageWay {
  const page = pageOf(paper, margins, held, { width: 0, height: 0 });
  const scaleCorrection = held === 'landscape' ? { x: feed, y: scan } : { x: scan, y: feed };
  const { printableMm } = pageOnPaper(page, { ppi, scaleCorrection });
  const { top, left, bottom, right } = sides;
  const gutterMm = Math.max(gapMm, asked);
  const besideMarks = {
    x: printableMm.x + left,
    y: printableMm.y + top,
    width: printableMm.width - left - right,
    height: printableMm.height - top - bottom,
  };
  const roomMm = platenMm ? withinPlaten(besideMarks, platenMm) : besideMarks;
  return {
    page,
    scaleCorrection,
    grain: grainFor(roomMm, gutterMm, MM_PER_INCH / ppi),
    spare: top > 0 ? 'all-round' : 'left-and-top',
  };
}

/** The part of a room that the press takes at once, in its middle; the page may lie on the platen either way. */
function withinPlaten(room: RectMm, { width, height }: SizeMm): RectMm {
  const [one, other] = [
    [width, height],
    [height, width],
  ].map(([across = 0, down = 0]) => ({
    width: Math.min(room.width, across),
    height: Math.min(room.height, down),
  }));
  const best = one!.width * one!.height >= other!.width * other!.height ? one! : other!;
  return {
    x: room.x + (room.width - best.width) / 2,
    y: room.y + (room.height - best.height) / 2,
    ...best,
  };
}
