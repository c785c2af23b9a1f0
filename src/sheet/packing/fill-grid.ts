import type { PackedItem, PackedPage, PackItem, Size } from './pack-item.ts';

/**
 * A page of items that are all alike: a grid, or two grids of which one is turned, beside or below each other, whichever
 * holds the most. Where the items differ, those like the first are laid.
 */
export function fillGrid(items: readonly PackItem[], left: readonly number[], room: Size): PackedPage {
  const { shapes } = items[left[0]!]!;
  const alike = left.filter((item) => sameShapes(items[item]!.shapes, shapes));
  let best: Omit<PackedItem, 'item'>[] = [];
  for (const [one, size] of shapes.entries())
    for (const other of shapes.keys()) {
      const columns = Math.floor(room.width / size.width);
      const rows = Math.floor(room.height / size.height);
      for (let across = 0; across <= columns; across += 1) {
        const rest = { width: room.width - across * size.width, height: room.height };
        const laid = [
          ...gridOf(one, size, { width: across * size.width, height: room.height }, 0, 0),
          ...gridOf(other, shapes[other]!, rest, across * size.width, 0),
        ];
        if (laid.length > best.length) best = laid;
      }
      for (let down = 0; down <= rows; down += 1) {
        const rest = { width: room.width, height: room.height - down * size.height };
        const laid = [
          ...gridOf(one, size, { width: room.width, height: down * size.height }, 0, 0),
          ...gridOf(other, shapes[other]!, rest, 0, down * size.height),
        ];
        if (laid.length > best.length) best = laid;
      }
    }
  return alike.slice(0, best.length).map((item, index) => ({ item, ...best[index]! }));
}

function gridOf(
  shape: number,
  { width, height }: Size,
  room: Size,
  x: number,
  y: number,
): Omit<PackedItem, 'item'>[] {
  const columns = Math.floor(room.width / width);
  const rows = Math.floor(room.height / height);
  return Array.from({ length: columns * rows }, (_, index) => ({
    shape,
    x: x + (index % columns) * width,
    y: y + Math.floor(index / columns) * height,
  }));
}

function sameShapes(one: readonly Size[], other: readonly Size[]): boolean {
  return (
    one.length === other.length &&
    one.every(({ width, height }, at) => width === other[at]!.width && height === other[at]!.height)
  );
}
