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
  const mostNow = () => (best ? best.length - 1 : mostPages);
  const seamless = findSeamlessPage(widened, [...widened.keys()], grown);
  if (seamless && fewest <= mostNow()) best = packBy(widened, grown, RULES, mostNow(), seamless);
  for (const rules of WAYS) {
    // One page that holds all is found by the rules together where one of them finds it.
    if (mostNow() < fewest || (mostNow() === 1 && rules.length === 1)) break;
    best = packBy(widened, grown, rules, mostNow()) ?? best;
  }
  return (
    best?.map((page) =>
      page.map((packed) => ({ ...packed, shape: original[packed.item]![packed.shape]! })),
    ) ?? null
  );
}

/** Of each page the fullest that the rules find, then each rule by itself: a fuller page now may cost one later. */
const WAYS: readonly (readonly Rule[])[] = [RULES, ...RULES.map((rule) => [rule])];

/** null once it is clear that more than `most` pages are needed. With a first page without a gap, more of them are looked for. */
function packBy(
  items: readonly PackItem[],
  room: Size,
  rules: readonly Rule[],
  most: number,
  seamless: PackedPage | null = null,
): PackedPage[] | null {
  const pages: PackedPage[] = [];
  let left = [...items.keys()];
  let next = seamless;
  while (left.length > 0) {
    if (pages.length + leastPages(items, left, room) > most) return null;
    const isLast = pages.length + 1 === most;
    const page: PackedPage | null = next ?? (isLast ? wholePage : fullestPage)(items, left, room, rules);
    if (page === null) return null;
    pages.push(page);
    const gone = new Set(page.map(({ item }) => item));
    left = left.filter((item) => !gone.has(item));
    next &&= findSeamlessPage(items, left, room);
  }
  return pages;
}

/** What doubles lose in a sum of areas, as part of a page. */
const ROUNDING = 1e-9;

/** As many pages as the area alone asks for. */
function leastPages(items: readonly PackItem[], which: Iterable<number>, room: Size): number {
  return Math.ceil(areaOf(items, which) / (room.width * room.height) - ROUNDING);
}

/** Of the pages that a grid and the rules find, the first of the fullest. */
function fullestPage(
  items: readonly PackItem[],
  left: readonly number[],
  room: Size,
  rules: readonly Rule[],
): PackedPage {
  const covered = (page: PackedPage) =>
    areaOf(
      items,
      page.map(({ item }) => item),
    );
  let best = fillGrid(items, left, room);
  for (const rule of rules) {
    if (best.length === left.length) return best;
    const page = fillPage(items, left, room, rule);
    if (covered(page) > covered(best)) best = page;
  }
  return best;
}

/** The first page that holds all; null for none. */
function wholePage(
  items: readonly PackItem[],
  left: readonly number[],
  room: Size,
  rules: readonly Rule[],
): PackedPage | null {
  const grid = fillGrid(items, left, room);
  if (grid.length === left.length) return grid;
  for (const rule of rules) {
    const page = fillPage(items, left, room, rule, true);
    if (page.length === left.length) return page;
  }
  return null;
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
