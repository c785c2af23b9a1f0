import { doSteps, type Steps } from '../steps.ts';
import { findSeamlessPage } from './build-blocks.ts';
import { fillGrid } from './fill-grid.ts';
import { fillPage, RULES, type Rule } from './fill-page.ts';
import type { KindsPage, PackedPage, PackItem, Size } from './pack-item.ts';
import { areaOf, countOf, keyOf, type Stock, stockOf, takeFirst, takeItems } from './stock.ts';

/**
 * Items on as few pages as several ways of packing find: every item once, none over another or nearer to it than the
 * gutter, all within the room. Whole units, so that nothing is rounded; the same items give the same pages.
 * Each item must fit the room in one of its shapes; shapes that do not are left aside.
 * @throws Error for an item that fits in none: whoever calls has told that piece from the others.
 */
export function packItems(items: readonly PackItem[], room: Size, gutter: number): readonly PackedPage[] {
  return doSteps(packItemsWithin(items, room, gutter, Infinity))!;
}

/** The same, where more pages than `mostPages` are of no use: null then, and found out early. @throws as packItems */
export function* packItemsWithin(
  items: readonly PackItem[],
  room: Size,
  gutter: number,
  mostPages: number,
): Steps<readonly PackedPage[] | null> {
  // With a gutter to the right of and below every item and the room, what may not touch may meet.
  const grown = { width: room.width + gutter, height: room.height + gutter };
  const { widened, original } = widen(items, grown, gutter);
  const stock = stockOf(widened, grown);
  const fewest = leastPages(stock, grown);
  let best: readonly PackedPage[] | null = null;
  const mostNow = () => (best ? best.length - 1 : mostPages);
  const seamless = (left: Stock) => findSeamlessPage(widened, itemsOf(left), grown);
  const first = seamless(stock);
  if (first && fewest <= mostNow())
    best = yield* packBy(stock, grown, RULES, mostNow(), { first, next: seamless });
  for (const rules of WAYS) {
    // One page that holds all is found by the rules together where one of them finds it.
    if (mostNow() < fewest || (mostNow() === 1 && rules.length === 1)) break;
    best = (yield* packBy(stock, grown, rules, mostNow())) ?? best;
  }
  return (
    best?.map((page) =>
      page.map((packed) => ({ ...packed, shape: original[packed.item]![packed.shape]! })),
    ) ?? null
  );
}

/** Of each page the fullest that the rules find, then each rule by itself: a fuller page now may cost one later. */
const WAYS: readonly (readonly Rule[])[] = [RULES, ...RULES.map((rule) => [rule])];

/** Pages without a gap: the first, and what finds one more in what is left. */
interface Seamless {
  readonly first: PackedPage;
  readonly next: (left: Stock) => PackedPage | null;
}

/** null once it is clear that more than `most` pages are needed. Pages without a gap come first. */
function* packBy(
  stock: Stock,
  room: Size,
  rules: readonly Rule[],
  most: number,
  seamless?: Seamless,
): Steps<PackedPage[] | null> {
  const pages: PackedPage[] = [];
  const fullestPage = rememberLast((left) => findFullestPage(left, room, rules));
  let left = stock;
  let next = seamless?.first ?? null;
  while (left.length > 0) {
    if (pages.length + leastPages(left, room) > most) return null;
    yield;
    if (next !== null) {
      pages.push(next);
      left = takeItems(left, new Set(next.map(({ item }) => item)));
      next = seamless!.next(left);
      continue;
    }
    const isLast = pages.length + 1 === most;
    const page = yield* isLast ? findWholePage(left, room, rules) : fullestPage(left);
    if (page === null) return null;
    const { items, rest } = fillWith(page, left);
    pages.push(items);
    left = rest;
  }
  return pages;
}

/** Copies of few kinds fill one page like the other: what the page before this was filled with is not looked for again. */
function rememberLast(fill: (left: Stock) => Steps<KindsPage>): (left: Stock) => Steps<KindsPage> {
  let last: { readonly key: string; readonly page: KindsPage } | null = null;
  return function* (left) {
    const key = keyOf(left);
    if (last?.key !== key) last = { key, page: yield* fill(left) };
    return last.page;
  };
}

/** The page with the first items of each kind, and what is left of them. */
function fillWith(page: KindsPage, left: Stock): { readonly items: PackedPage; readonly rest: Stock } {
  const counts = left.map(() => 0);
  const items = page.map(({ kind, ...place }) => {
    const item = left[kind]!.items[counts[kind]!]!;
    counts[kind]! += 1;
    return { item, ...place };
  });
  return { items, rest: takeFirst(left, counts) };
}

function itemsOf(stock: Stock): readonly number[] {
  return stock.flatMap(({ items }) => items).sort((one, other) => one - other);
}

/** What doubles lose in a sum of areas, as part of a page. */
const ROUNDING = 1e-9;

/** As many pages as the area alone asks for. */
function leastPages(stock: Stock, room: Size): number {
  return Math.ceil(areaOf(stock) / (room.width * room.height) - ROUNDING);
}

/** Of the pages that a grid and the rules find, the first of the fullest. */
function* findFullestPage(left: Stock, room: Size, rules: readonly Rule[]): Steps<KindsPage> {
  const covered = (page: KindsPage) => page.reduce((area, { kind }) => area + left[kind]!.area, 0);
  const all = countOf(left);
  let best = fillGrid(left, room);
  for (const rule of rules) {
    if (best.length === all) return best;
    const page = yield* fillPage(left, room, rule);
    if (covered(page) > covered(best)) best = page;
  }
  return best;
}

/** The first page that holds all; null for none. */
function* findWholePage(left: Stock, room: Size, rules: readonly Rule[]): Steps<KindsPage | null> {
  const all = countOf(left);
  const grid = fillGrid(left, room);
  if (grid.length === all) return grid;
  for (const rule of rules) {
    const page = yield* fillPage(left, room, rule, true);
    if (page.length === all) return page;
  }
  return null;
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
