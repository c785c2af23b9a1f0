import { packItems } from '../packing/pack-items.ts';
import { type Arrangement, arrangeGroup, type GroupMember } from './arrange-group.ts';
import type { PageWay } from './page-ways.ts';
import type { SheetPiece } from './sheet-piece.ts';

/** A page that is filled one way; places in pixels from the top left of the page. */
export interface FilledPage {
  readonly way: PageWay;
  readonly members: readonly GroupMember[];
}

export interface PackedGroups {
  readonly pages: readonly FilledPage[];
  /** Groups that no way takes together. */
  readonly apart: readonly number[];
  /** Pieces whose pictures no way takes. */
  readonly misfits: readonly number[];
}

/** Groups on as few pages as the ways allow; of ways as good, the first. What no way takes whole is packed piece by piece. */
export function packGroups(pieces: readonly SheetPiece[], ways: readonly PageWay[]): PackedGroups {
  const whole = groupPieces(pieces);
  const takes = (members: readonly number[]) =>
    ways.some((way) => shapesFor(pieces, members, way).length > 0);
  const apart = [...whole].filter(([, members]) => members.length > 1 && !takes(members));
  const separate = new Set(apart.map(([group]) => group));
  const items = [...whole].flatMap(([group, members]) =>
    separate.has(group) ? members.map((member) => [member]) : [members],
  );
  return {
    pages: packBest(pieces, items.filter(takes), ways),
    apart: [...separate],
    misfits: items.filter((members) => !takes(members)).flat(),
  };
}

function groupPieces(pieces: readonly SheetPiece[]): ReadonlyMap<number, readonly number[]> {
  const groups = new Map<number, number[]>();
  for (const [piece, { group }] of pieces.entries()) groups.set(group, [...(groups.get(group) ?? []), piece]);
  return groups;
}

type Items = readonly (readonly number[])[];

function packBest(
  pieces: readonly SheetPiece[],
  items: Items,
  ways: readonly PageWay[],
): readonly FilledPage[] {
  if (items.length === 0) return [];
  let best: readonly FilledPage[] | null = null;
  for (const way of ways) {
    const pages = packOneWay(pieces, items, way, ways);
    if (pages && (best === null || pages.length < best.length)) best = pages;
    if (best?.length === 1) break;
  }
  return best!;
}

/** What this way does not take goes on pages of other ways; null where it takes nothing. */
function packOneWay(
  pieces: readonly SheetPiece[],
  items: Items,
  way: PageWay,
  ways: readonly PageWay[],
): readonly FilledPage[] | null {
  const shapes = items.map((members) => shapesFor(pieces, members, way));
  const fitting = [...items.keys()].filter((item) => shapes[item]!.length > 0);
  if (fitting.length === 0) return null;
  const rest = items.filter((_, item) => shapes[item]!.length === 0);
  const { roomPx, gutterPx, spare } = way;
  const packed = packItems(
    fitting.map((item) => ({ shapes: shapes[item] as [Arrangement, ...Arrangement[]] })),
    roomPx,
    gutterPx,
  );
  const pages = packed.map((page): FilledPage => {
    const laid = page.map(({ item, shape, x, y }) => ({ x, y, ...pick(shapes[fitting[item]!]!, shape) }));
    const right = Math.max(...laid.map(({ x, width }) => x + width));
    const bottom = Math.max(...laid.map(({ y, height }) => y + height));
    const share = spare === 'all-round' ? 2 : 1;
    const left = roomPx.x + Math.floor((roomPx.width - right) / share);
    const top = roomPx.y + Math.floor((roomPx.height - bottom) / share);
    const members = laid.flatMap((item) =>
      item.members.map((member) => ({ ...member, x: left + item.x + member.x, y: top + item.y + member.y })),
    );
    return { way, members: members.sort((one, other) => one.piece - other.piece) };
  });
  return [...pages, ...packBest(pieces, rest, ways)];
}

const pick = (shapes: readonly Arrangement[], shape: number) => {
  const { width, height, members } = shapes[shape]!;
  return { width, height, members };
};

function shapesFor(
  pieces: readonly SheetPiece[],
  members: readonly number[],
  { roomPx, gutterPx }: PageWay,
): readonly Arrangement[] {
  return arrangeGroup(pieces, members, gutterPx).filter(
    ({ width, height }) => width <= roomPx.width && height <= roomPx.height,
  );
}
