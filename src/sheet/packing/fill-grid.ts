import type { KindsPage, PackedKind, Size } from './pack-item.ts';
import type { Stock } from './stock.ts';

/**
 * A page of items that are all alike: a grid, or two grids of which one is turned, beside or below each other, whichever
 * holds the most. Where the items differ, those of the first kind are laid.
 */
export function fillGrid([kind]: Stock, room: Size): KindsPage {
  if (!kind) return [];
  const { shapes, items } = kind;
  let best: TwoGrids | null = null;
  for (const [one, size] of shapes.entries())
    for (const other of shapes.keys())
      for (const grids of listTwoGrids(one, size, other, shapes[other]!, room))
        if (grids.count > (best?.count ?? 0)) best = grids;
  const laid = (best?.parts ?? []).flatMap(({ shape, room: part, x, y }) =>
    gridOf(shape, shapes[shape]!, part, x, y),
  );
  return laid.slice(0, items.length);
}

interface GridPart {
  readonly shape: number;
  readonly room: Size;
  readonly x: number;
  readonly y: number;
}

interface TwoGrids {
  readonly count: number;
  readonly parts: readonly GridPart[];
}

/** As many columns or rows of one shape as there is room for, and all the other's that fit beside or below them. */
function* listTwoGrids(
  one: number,
  size: Size,
  other: number,
  otherSize: Size,
  room: Size,
): Iterable<TwoGrids> {
  const grids = (first: Size, rest: Size, x: number, y: number): TwoGrids => ({
    count: countIn(size, first) + countIn(otherSize, rest),
    parts: [
      { shape: one, room: first, x: 0, y: 0 },
      { shape: other, room: rest, x, y },
    ],
  });
  const { width, height } = room;
  for (let x = 0; x <= width; x += size.width)
    yield grids({ width: x, height }, { width: width - x, height }, x, 0);
  for (let y = 0; y <= height; y += size.height)
    yield grids({ width, height: y }, { width, height: height - y }, 0, y);
}

function countIn({ width, height }: Size, room: Size): number {
  return Math.floor(room.width / width) * Math.floor(room.height / height);
}

function gridOf(shape: number, { width, height }: Size, room: Size, x: number, y: number): PackedKind[] {
  const columns = Math.floor(room.width / width);
  const rows = Math.floor(room.height / height);
  return Array.from({ length: columns * rows }, (_, index) => ({
    kind: 0,
    shape,
    x: x + (index % columns) * width,
    y: y + Math.floor(index / columns) * height,
  }));
}
