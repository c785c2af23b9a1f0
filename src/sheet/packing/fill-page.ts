import { FreeRects, type Rect } from './free-rects.ts';
import type { PackedItem, PackedPage, PackItem, Size } from './pack-item.ts';

/** How good a place is, smaller is better: compared by the first number, then by the second. */
export type Rule = (free: Rect, size: Size) => readonly [number, number];

/** The free rectangle whose tighter side is left the least, then the other. */
const byShortSide: Rule = (free, { width, height }) => {
  const across = free.width - width;
  const down = free.height - height;
  return across < down ? [across, down] : [down, across];
};

/** The same, but large pieces go first: small ones find room later. */
const byAreaThenShortSide: Rule = (free, size) => [
  -size.width * size.height,
  Math.min(free.width - size.width, free.height - size.height),
];

/** Long pieces first. */
const byLongestThenShortSide: Rule = (free, size) => [
  -Math.max(size.width, size.height),
  Math.min(free.width - size.width, free.height - size.height),
];

/** The smallest free rectangle that takes it, for its area. */
const byWaste: Rule = (free, { width, height }) => [
  (free.width * free.height) / (width * height),
  Math.min(free.width - width, free.height - height),
];

/** Every rule, the one that most often wins first. */
export const RULES: readonly Rule[] = [byShortSide, byAreaThenShortSide, byLongestThenShortSide, byWaste];

/**
 * Fills one page from the items named in `left`: again and again the pair of item and place that the rule finds best,
 * until nothing fits. Items of the same shapes are tried once.
 */
export function fillPage(
  items: readonly PackItem[],
  left: readonly number[],
  room: Size,
  rule: Rule,
): PackedPage {
  const free = new FreeRects(room.width, room.height);
  const packed: PackedItem[] = [];
  const kinds = groupByShapes(items, left);
  for (;;) {
    const best = findBestPlace(items, kinds, free.all, rule);
    if (best === null) return packed;
    const { kind, item, shape, at } = best;
    kind.shift();
    packed.push({ item, shape, x: at.x, y: at.y });
    free.take({ x: at.x, y: at.y, ...items[item]!.shapes[shape]! });
  }
}

function groupByShapes(items: readonly PackItem[], left: readonly number[]): number[][] {
  const kinds = new Map<string, number[]>();
  for (const item of left) {
    const key = items[item]!.shapes.map(({ width, height }) => `${width}x${height}`).join();
    kinds.set(key, [...(kinds.get(key) ?? []), item]);
  }
  return [...kinds.values()];
}

interface Place {
  /** The items of the same shapes, of which this is the first. */
  readonly kind: number[];
  readonly item: number;
  readonly shape: number;
  readonly at: Rect;
}

function findBestPlace(
  items: readonly PackItem[],
  kinds: readonly number[][],
  free: readonly Rect[],
  rule: Rule,
): Place | null {
  let best: Place | null = null;
  let score: readonly [number, number] = [Infinity, Infinity];
  for (const kind of kinds) {
    const [item] = kind;
    if (item === undefined) continue;
    for (const [shape, size] of items[item]!.shapes.entries())
      for (const at of free) {
        if (size.width > at.width || size.height > at.height) continue;
        const here = rule(at, size);
        if (here[0] > score[0] || (here[0] === score[0] && here[1] >= score[1])) continue;
        score = here;
        best = { kind, item, shape, at };
      }
  }
  return best;
}
