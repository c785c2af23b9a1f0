import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { PackedPage, PackItem, Size } from '../../../src/sheet/packing/pack-item.ts';
import { packItems } from '../../../src/sheet/packing/pack-items.ts';
import { seededNumbers } from '../../pictures.ts';

const lying = ({ width, height }: Size): Size => ({ width: height, height: width });
const itemOf = (size: Size, mayTurn: boolean): PackItem => ({
  shapes: mayTurn ? [size, lying(size)] : [size],
});
const boxesOf = (items: readonly PackItem[], page: PackedPage) =>
  page.map(({ item, shape, x, y }) => ({ x, y, ...items[item]!.shapes[shape]! }));

/** Printable part of A4 at 300 ppi in an unknown printer, and 3 mm. */
const ROOM = { width: 2330, height: 3357 };
const GUTTER = 35;

describe('packItems', () => {
  it('keeps count, room and gutter, and gives the same pages again', () => {
    const size = fc.record({
      width: fc.integer({ min: 5, max: 150 }),
      height: fc.integer({ min: 5, max: 150 }),
    });
    fc.assert(
      fc.property(
        fc.array(fc.tuple(size, fc.boolean()), { minLength: 1, maxLength: 40 }),
        fc.integer({ min: 0, max: 12 }),
        (pieces, gutter) => {
          const room = { width: 200, height: 280 };
          const items = pieces.map(([piece, mayTurn]) => itemOf(piece, mayTurn));
          const pages = packItems(items, room, gutter);
          expect(pages.flatMap((page) => page.map(({ item }) => item)).sort((a, b) => a - b)).toEqual([
            ...items.keys(),
          ]);
          for (const page of pages) {
            const boxes = boxesOf(items, page);
            for (const [at, one] of boxes.entries()) {
              expect(one.x).toBeGreaterThanOrEqual(0);
              expect(one.y).toBeGreaterThanOrEqual(0);
              expect(one.x + one.width).toBeLessThanOrEqual(room.width);
              expect(one.y + one.height).toBeLessThanOrEqual(room.height);
              for (const other of boxes.slice(at + 1)) {
                const apart = Math.max(
                  one.x - other.x - other.width,
                  other.x - one.x - one.width,
                  one.y - other.y - other.height,
                  other.y - one.y - one.height,
                );
                expect(apart).toBeGreaterThanOrEqual(gutter);
              }
            }
          }
          expect(packItems(items, room, gutter)).toEqual(pages);
        },
      ),
      { numRuns: 60 },
    );
  });

  // Columns and rows by division, the gutter counted once less than there are pieces.
  it.each([
    [50, 30, false],
    [70, 41, false],
    [66, 95, false],
    [50, 30, true],
    [197, 284, true],
  ])('lays as many of %d x %d mm on a page as a grid holds', (widthMm, heightMm, mayTurn) => {
    const [width, height] = [widthMm, heightMm].map((mm) => Math.floor((mm / 25.4) * 300)) as [
      number,
      number,
    ];
    const count = (w: number, h: number) =>
      Math.floor((ROOM.width + GUTTER) / (w + GUTTER)) * Math.floor((ROOM.height + GUTTER) / (h + GUTTER));
    const grid = mayTurn ? Math.max(count(width, height), count(height, width)) : count(width, height);
    const items = Array.from({ length: grid }, () => itemOf({ width, height }, mayTurn));
    expect(packItems(items, ROOM, GUTTER)).toHaveLength(1);
    expect(packItems([...items, items[0]!, ...items], ROOM, GUTTER).length).toBeLessThanOrEqual(3);
  });

  it('turns some of pieces that are alike where that is better than any grid', () => {
    // Two of 3 x 2 above each other and a turned one beside them fill 5 x 4; a plain grid of either kind holds two.
    const items = Array.from({ length: 3 }, () => itemOf({ width: 3, height: 2 }, true));
    expect(packItems(items, { width: 5, height: 4 }, 0)).toHaveLength(1);
  });

  it('needs at most 5 % more pages than sets that were cut from whole ones, over all of them', () => {
    let cut = 0;
    let needed = 0;
    for (let seed = 1; seed <= 60; seed += 1) {
      const { items, sheets } = cutSheets(seed);
      cut += sheets;
      needed += packItems(items, ROOM, 0).length;
    }
    expect(needed / cut).toBeLessThanOrEqual(1.05);
  });
});

/** One to ten sheets, each cut across or along, again and again, into 3 to 14 pieces of at least 25 mm; in any order. */
function cutSheets(seed: number): { items: PackItem[]; sheets: number } {
  // Seeds next to each other begin alike.
  const random = seededNumbers(Math.imul(seed, 2654435761));
  const least = 295;
  const sheets = 1 + Math.floor(random() * 10);
  const pieces: Size[] = [];
  for (let sheet = 0; sheet < sheets; sheet += 1) {
    const parts: Size[] = [ROOM];
    const wanted = 3 + Math.floor(random() * 12);
    for (let tries = 0; tries < 100 && parts.length < wanted; tries += 1) {
      const at = Math.floor(random() * parts.length);
      const { width, height } = parts[at]!;
      const across = random() < width / (width + height);
      const long = across ? width : height;
      if (long < 2 * least) continue;
      const first = least + Math.floor(random() * (long - 2 * least));
      const halves = across
        ? [
            { width: first, height },
            { width: width - first, height },
          ]
        : [
            { width, height: first },
            { width, height: height - first },
          ];
      parts.splice(at, 1, ...halves);
    }
    pieces.push(...parts);
  }
  for (let last = pieces.length - 1; last > 0; last -= 1) {
    const other = Math.floor(random() * (last + 1));
    [pieces[last], pieces[other]] = [pieces[other]!, pieces[last]!];
  }
  return { items: pieces.map((piece) => itemOf(piece, seed % 2 === 0)), sheets };
}
