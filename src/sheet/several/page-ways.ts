import { MM_PER_INCH } from '../../geometry/length.ts';
import type { RectMm } from '../../geometry/rectangle.ts';
import { type Page, pageOf } from '../fit-page.ts';
import type { Size } from '../packing/pack-item.ts';
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
  /** No page of a roll is longer than this. */
  readonly longestMm: number;
}

/** A page held one way, and how much of it pieces may fill. */
export interface PageWay {
  readonly page: Page;
  readonly room: Room;
  readonly scaleCorrection: { readonly x: number; readonly y: number };
  readonly grain: PackingGrain;
  /** Where room is kept for marks, what pieces leave over is shared by all sides; else all of it is at the left and the top. */
  readonly spare: 'all-round' | 'left-and-top';
  /** Of a roll: the same way on a page that ends where pieces that take up this much do, and its marks; null for sheets. */
  readonly cutAfter: ((used: Size) => PageWay) | null;
}

/** What a way keeps free for marks. */
export type Room = (typeof ROOMS)[number];

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

/** On a roll room costs paper: these are for more than marks along the edges, for these, and for none. */
export const [ROOM_FOR_MORE, ROOM_FOR_EDGES, ROOM_FOR_NONE] = [
  ROOMS.slice(0, 3),
  ROOMS.slice(3, 4),
  ROOMS.slice(4),
] as const;

/**
 * The ways to fill a page, from roomy to tight; those that come first are taken where they need no more pages: room for
 * all marks, for ticks of every second side, for the marks at the edges only, and none for marks. The pages of a roll are
 * `alongMm` long.
 */
export function listPageWays(
  request: SheetsRequest,
  { alongMm = request.longestMm, rooms = ROOMS }: { alongMm?: number; rooms?: readonly Room[] } = {},
): readonly PageWay[] {
  return rooms.flatMap((room) =>
    (['portrait', 'landscape'] as const).map((held) => pageWay(request, held, room, alongMm)),
  );
}

function pageWay(
  request: SheetsRequest,
  held: Orientation,
  room: Room,
  alongMm: number,
  lyingPlatenMm?: SizeMm | null,
): PageWay {
  const { paper, margins, ppi, gutterMm: asked } = request;
  const { scan, feed } = request.scaleCorrection;
  const heightMm = paper.heightMm ?? alongMm;
  const page = pageOf({ ...paper, heightMm }, margins, held, { width: 0, height: 0 });
  const scaleCorrection = held === 'landscape' ? { x: feed, y: scan } : { x: scan, y: feed };
  const { printableMm } = pageOnPaper(page, { ppi, scaleCorrection });
  const { top, left, bottom, right } = room.sides;
  const gutterMm = Math.max(room.gapMm, asked);
  const besideMarks = {
    x: printableMm.x + left,
    y: printableMm.y + top,
    width: printableMm.width - left - right,
    height: printableMm.height - top - bottom,
  };
  const platenMm = lyingPlatenMm ?? (request.platenMm && liePlaten(besideMarks, request.platenMm));
  const roomMm = platenMm ? inMiddle(besideMarks, platenMm) : besideMarks;
  const grain = grainFor(roomMm, gutterMm, MM_PER_INCH / ppi);
  const cutAfter = (used: Size) => {
    const usedMm = (held === 'portrait' ? used.height : used.width) * grain.unitMm;
    const spareMm = held === 'portrait' ? besideMarks.height - usedMm : besideMarks.width - usedMm;
    // Cut by hand, at a whole millimetre; a pixel of the grain may be lost where counting begins.
    const neededMm = heightMm - (spareMm - grain.originSlackMm) * feed;
    return pageWay(request, held, room, Math.min(heightMm, Math.ceil(neededMm - ROUNDING_MM)), platenMm);
  };
  return {
    page,
    room,
    scaleCorrection,
    grain,
    spare: top > 0 ? 'all-round' : 'left-and-top',
    cutAfter: paper.heightMm === null ? cutAfter : null,
  };
}

/** What doubles lose. */
const ROUNDING_MM = 1e-6;

/** The platen as the page lies on it: the way that takes more of the room. */
function liePlaten(room: SizeMm, { width, height }: SizeMm): SizeMm {
  const taken = (across: number, down: number) => Math.min(room.width, across) * Math.min(room.height, down);
  return taken(width, height) >= taken(height, width) ? { width, height } : { width: height, height: width };
}

/** The part of a room that the press takes at once. */
function inMiddle(room: RectMm, platen: SizeMm): RectMm {
  const width = Math.min(room.width, platen.width);
  const height = Math.min(room.height, platen.height);
  return {
    x: room.x + (room.width - width) / 2,
    y: room.y + (room.height - height) / 2,
    width,
    height,
  };
}
