import type { PointMm } from '../../geometry/rectangle.ts';
import { packItemsWithin } from '../packing/pack-items.ts';
import type { Steps } from '../steps.ts';
import { type Arrangement, arrangeGroup } from './arrange-group.ts';
import type { PageWay } from './page-ways.ts';
import type { SheetPiece } from './sheet-piece.ts';

/** Where the middle of a piece lies on its page. */
export interface PackedPiece {
  readonly piece: number;
  readonly turn: 0 | 90;
  readonly middleMm: PointMm;
}

/** A page that is filled one way. */
export interface FilledPage {
  readonly way: PageWay;
  readonly members: readonly PackedPiece[];
  /** The pieces that lie on it, those together that were packed as one. */
  readonly items: Items;
  /** Of arcs that lie in each other's hollows, so that their boxes overlap: how near they come, mm. */
  readonly nestGapMm?: number;
}

type Items = readonly (readonly number[])[];

export interface PackedGroups {
  readonly pages: readonly FilledPage[];
  /** Groups that no way takes together. */
  readonly apart: readonly number[];
  /** Pieces whose pictures no way takes. */
  readonly misfits: readonly number[];
}

/** Groups on as few pages as the ways allow; of ways as good, the first. What no way takes whole is packed piece by piece. */
export function* packGroups(pieces: readonly SheetPiece[], ways: readonly PageWay[]): Steps<PackedGroups> {
  const whole = groupPieces(pieces);
  const takes = (members: readonly number[]) =>
    ways.some((way) => shapesFor(pieces, members, way).length > 0);
  const apart = [...whole].filter(([, members]) => members.length > 1 && !takes(members));
  const separate = new Set(apart.map(([group]) => group));
  const items = [...whole].flatMap(([group, members]) =>
    separate.has(group) ? members.map((member) => [member]) : [members],
  );
  return {
    pages: (yield* packBest(pieces, items.filter(takes), ways))!,
    apart: [...separate],
    misfits: items.filter((members) => !takes(members)).flat(),
  };
}

function groupPieces(pieces: readonly SheetPiece[]): ReadonlyMap<number, readonly number[]> {
  const groups = new Map<number, number[]>();
  for (const [piece, { group }] of pieces.entries()) groups.set(group, [...(groups.get(group) ?? []), piece]);
  return groups;
}

/** These pieces on one page; null where the ways find none that takes them all. */
export function* packOnOnePage(
  pieces: readonly SheetPiece[],
  items: Items,
  ways: readonly PageWay[],
): Steps<FilledPage | null> {
  return (yield* packBest(pieces, items, ways, 1))?.[0] ?? null;
}

/**
 * Tight ways are tried first, for they mostly need the fewest pages: of a roomier one, which is better where it needs no
 * more, it is then soon clear whether it does. null where more pages than `mostPages` are needed.
 */
function* packBest(
  pieces: readonly SheetPiece[],
  items: Items,
  ways: readonly PageWay[],
  mostPages = Infinity,
): Steps<readonly FilledPage[] | null> {
  if (items.length === 0) return [];
  let best: readonly FilledPage[] | null = null;
  let most = mostPages;
  for (const way of ways.toReversed()) {
    const pages = yield* packOneWay(pieces, items, way, ways, most);
    if (pages === null) continue;
    best = pages;
    most = pages.length;
  }
  return best;
}

/** What this way does not take goes on pages of other ways; null where it takes nothing, or needs more pages. */
function* packOneWay(
  pieces: readonly SheetPiece[],
  items: Items,
  way: PageWay,
  ways: readonly PageWay[],
  mostPages: number,
): Steps<readonly FilledPage[] | null> {
  const shapes = items.map((members) => shapesFor(pieces, members, way));
  const fitting = [...items.keys()].filter((item) => shapes[item]!.length > 0);
  if (fitting.length === 0) return null;
  const rest = items.filter((_, item) => shapes[item]!.length === 0);
  const { room, gutter } = way.grain;
  const packed = yield* packItemsWithin(
    fitting.map((item) => ({ shapes: shapes[item] as [Arrangement, ...Arrangement[]] })),
    room,
    gutter,
    mostPages - Math.min(rest.length, 1),
  );
  if (packed === null) return null;
  const pages = packed.map((page) =>
    placeOnPage(
      page.map(({ item, shape, x, y }) => ({ x, y, ...pick(shapes[fitting[item]!]!, shape) })),
      way,
    ),
  );
  const others = yield* packBest(pieces, rest, ways, mostPages - pages.length);
  return others && [...pages, ...others];
}

/** What is left over of the room is shared by its sides as the way has it; of a roll, none is left over along it. */
export function placeOnPage(
  laid: readonly (Arrangement & { readonly x: number; readonly y: number })[],
  longWay: PageWay,
): FilledPage {
  const used = {
    width: Math.max(...laid.map(({ x, width }) => x + width)),
    height: Math.max(...laid.map(({ y, height }) => y + height)),
  };
  const way = longWay.cutAfter?.(used) ?? longWay;
  const { room, originMm, unitMm } = way.grain;
  const share = way.spare === 'all-round' ? 2 : 1;
  const left = Math.max(0, Math.floor((room.width - used.width) / share));
  const top = Math.max(0, Math.floor((room.height - used.height) / share));
  const members = laid.flatMap((item) =>
    item.members.map(({ piece, turn, x, y }) => ({
      piece,
      turn,
      middleMm: {
        x: originMm.x + (left + item.x + x) * unitMm,
        y: originMm.y + (top + item.y + y) * unitMm,
      },
    })),
  );
  return {
    way,
    members: members.sort((one, other) => one.piece - other.piece),
    items: laid.map((item) => item.members.map(({ piece }) => piece)),
  };
}

const pick = (shapes: readonly Arrangement[], shape: number) => {
  const { width, height, members } = shapes[shape]!;
  return { width, height, members };
};

function shapesFor(
  pieces: readonly SheetPiece[],
  members: readonly number[],
  { grain }: PageWay,
): readonly Arrangement[] {
  const { room } = grain;
  return arrangeGroup(pieces, members, grain).filter(
    ({ width, height }) => width <= room.width && height <= room.height,
  );
}
