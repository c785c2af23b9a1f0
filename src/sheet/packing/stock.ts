import type { PackItem, Size } from './pack-item.ts';

/** Items of the same shapes, of which one is as good as another. */
export interface Kind {
  readonly id: number;
  readonly shapes: PackItem['shapes'];
  /** By its first shape. */
  readonly area: number;
  /** No page holds more of them. */
  readonly mostOnPage: number;
  /** Those that are still to be packed, in their order; one or more. */
  readonly items: readonly number[];
}

/** What is still to be packed, by kinds: the kind of the first item first. */
export type Stock = readonly Kind[];

export function stockOf(items: readonly PackItem[], room: Size): Stock {
  const kinds = new Map<string, { readonly shapes: PackItem['shapes']; readonly items: number[] }>();
  for (const [item, { shapes }] of items.entries()) {
    const key = shapes.map(({ width, height }) => `${width}x${height}`).join();
    const known = kinds.get(key);
    if (known) known.items.push(item);
    else kinds.set(key, { shapes, items: [item] });
  }
  return [...kinds.values()].map(({ shapes, items: alike }, id) => {
    const areas = shapes.map(({ width, height }) => width * height);
    const mostOnPage = Math.floor((room.width * room.height) / Math.min(...areas));
    return { id, shapes, area: areas[0]!, mostOnPage, items: alike };
  });
}

/** What is left when so many of each kind, by its place in the stock, are packed: the first of each. */
export function takeFirst(stock: Stock, counts: readonly number[]): Stock {
  return inOrder(
    stock.map((kind, at) => (counts[at] ? { ...kind, items: kind.items.slice(counts[at]) } : kind)),
  );
}

/** What is left when these are packed, whichever they are. */
export function takeItems(stock: Stock, packed: ReadonlySet<number>): Stock {
  return inOrder(stock.map((kind) => ({ ...kind, items: kind.items.filter((item) => !packed.has(item)) })));
}

function inOrder(kinds: readonly Kind[]): Stock {
  return kinds.filter(({ items }) => items.length > 0).sort((one, other) => one.items[0]! - other.items[0]!);
}

export function countOf(stock: Stock): number {
  return stock.reduce((count, { items }) => count + items.length, 0);
}

export function areaOf(stock: Stock): number {
  return stock.reduce((sum, { area, items }) => sum + area * items.length, 0);
}

/** Two stocks of one key fill a page alike: of a kind that cannot run out on a page, more makes no difference. */
export function keyOf(stock: Stock): string {
  return stock.map(({ id, mostOnPage, items }) => `${id}:${Math.min(items.length, mostOnPage + 1)}`).join();
}
