import { findSeamlessPage } from './build-blocks.ts';
import { fillGrid } from './fill-grid.ts';
import { fillPage, RULES, type Rule } from './fill-page.ts';
import type { PackedPage, PackItem, Size } from './pack-item.ts';

/**
 * Items on as few pages as several ways of packing find: every item once, none over another or nearer to it than the
 * gutter, all within the room. Whole units, so that nothing is rounded; the same items give the same pages.
 * Each item must fit the room in one of its shapes; shapes that do not are left aside.
 * @throws Error for an item that fits in none: whoever calls has told that piece from the others.
 */
export function packItems(items: readonly PackItem[], room: Size, gutter: number): readonly PackedPage[] {
  return packItemsWithin(items, room, gutter, Infinity)!;
}

/** The same, where more pages than `mostPages` are of no use: null then, and found out early. @throws as packItems */
export function packItemsWithin(
  items: readonly PackItem[],
  room: Size,
  gutter: number,
  mostPages: number,
): readonly PackedPage[] | null {
  // With a gutter to the right of and below every item and the room, what may not touch may meet.
  const grown = { width: room.width + gutter, height: room.height + gutter };
  const { widened, original } = widen(items, grown, gutter);
  const fewest = leastPages(widened, widened.keys(), grown);
  let best: readonly PackedPage[] | null = null;
  for (const way of WAYS) {
    const most: number = best ? best.length - 1 : mostPages;
    if (most < fewest) break;
    best = packBy(widened, grown, way, most) ?? best;
  }
  return (
    best?.map((page) =>
      page.map((packed) => ({ ...packed, shape: original[packed.item]![packed.shape]! })),
    ) ?? null
  );
}

interface Way {
  readonly rules: readonly Rule[];
  readonly seamless: boolean;
}

/** Of each page the fullest that the rules find, then each rule by itself: a fuller page now may cost one later. */
const WAYS: readonly Way[] = [
  { rules: RULES, seamless: true },
  { rules: RULES, seamless: false },
  ...RULES.map((rule) => ({ rules: [rule], seamless: false })),
];

/** null once it is clear that more than `most` pages are needed. */
function packBy(
  items: readonly PackItem[],
  room: Size,
  { rules, seamless }: Way,
  most: number,
): PackedPage[] | null {
  const pages: PackedPage[] = [];
  let left = [...items.keys()];
  let joinable = seamless;
  while (left.length > 0) {
    if (pages.length + leastPages(items, left, room) > most) return null;
    const whole: PackedPage | null = joinable ? findSeamlessPage(items, left, room) : null;
    joinable = whole !== null;
    const page =
      whole ??
      fullest(items, [
        fillGrid(items, left, room),
        ...rules.map((rule) => fillPage(items, left, room, rule)),
      ]);
    pages.push(page);
    const gone = new Set(page.map(({ item }) => item));
    left = left.filter((item) => !gone.has(item));
  }
  return pages;
}

/** What doubles lose in a sum of areas, as part of a page. */
const ROUNDING = 1e-9;

/** As many pages as the area alone asks for. */
function leastPages(items: readonly PackItem[], which: Iterable<number>, room: Size): number {
  return Math.ceil(areaOf(items, which) / (room.width * room.height) - ROUNDING);
}

function fullest(items: readonly PackItem[], pages: readonly PackedPage[]): PackedPage {
  const covered = (page: PackedPage) =>
    areaOf(
      items,
      page.map(({ item }) => item),
    );
  return pages.reduce((best, page) => (covered(page) > covered(best) ? page : best));
}

function areaOf(items: readonly PackItem[], which: Iterable<number>): number {
  let area = 0;
  for (const item of which) {
    const [{ width, height }] = items[item]!.shapes;
    area += width * height;
  }
  return area;
}

/** The items with their gutter, without the shapes that fit no page, and which shapes those that stayed were. */
function widen(items: readonly PackItem[], grown: Size, gutter: number) {
  const kept = items.map(({ shapes }, item) => {
    const fitting = shapes
      .map(({ width, height }, shape) => ({ shape, width: width + gutter, height: height + gutter }))
      .filter(({ width, height }) => width <= grown.width && height <= grown.height);
    if (fitting.length === 0) throw new Error(`Item ${item} fits no page.`);
    return fitting;
  });
  const sizes = kept.map((fitting) => fitting.map(({ width, height }) => ({ width, height })));
  return {
    widened: sizes.map((shapes) => ({ shapes: shapes as [Size, ...Size[]] })),
    original: kept.map((fitting) => fitting.map(({ shape }) => shape)),
  };
}
