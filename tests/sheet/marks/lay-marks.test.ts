import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { DrawnItem } from '../../../src/geometry/drawing.ts';
import { findItemBounds } from '../../../src/geometry/drawing-bounds.ts';
import type { Path } from '../../../src/geometry/path.ts';
import type { RectMm } from '../../../src/geometry/rectangle.ts';
import { moveDrawing, movePath } from '../../../src/geometry/rigid-move.ts';
import { letter } from '../../../src/lettering/letter.ts';
import { distanceBetween } from '../../../src/sheet/marks/distance-between.ts';
import { layMarks } from '../../../src/sheet/marks/lay-marks.ts';
import { MARK_KINDS } from '../../../src/sheet/marks/mark-kinds.ts';
import type { MarkRequest } from '../../../src/sheet/marks/mark-request.ts';
import { mirrorWitness } from '../../../src/sheet/marks/mirror-witness.ts';
import { page, piece, TILE_LABEL, tagPage, tilePage } from './pages.ts';

const close = 1e-6;
const overlap = (one: RectMm, other: RectMm) =>
  one.x < other.x + other.width - close &&
  other.x < one.x + one.width - close &&
  one.y < other.y + other.height - close &&
  other.y < one.y + one.height - close;
const within = (outer: RectMm, inner: RectMm) =>
  inner.x >= outer.x - close &&
  inner.y >= outer.y - close &&
  inner.x + inner.width <= outer.x + outer.width + close &&
  inner.y + inner.height <= outer.y + outer.height + close;
const boundsOf = (item: DrawnItem) => findItemBounds(item) ?? { x: 0, y: 0, width: 0, height: 0 };

/** Pages of all sizes with up to nine pieces in a grid, as a packer would lay them, or reaching over the page. */
const anyPage: fc.Arbitrary<MarkRequest> = fc
  .record({
    width: fc.integer({ min: 20, max: 450 }),
    height: fc.integer({ min: 20, max: 500 }),
    margin: fc.constantFrom(0, 3, 3.4, 6.35),
    columns: fc.integer({ min: 1, max: 3 }),
    rows: fc.integer({ min: 1, max: 3 }),
    pieceWidth: fc.double({ min: 10, max: 210, noNaN: true }),
    pieceHeight: fc.double({ min: 10, max: 210, noNaN: true }),
    bleed: fc.constantFrom(0, 2, 3.2),
    gutter: fc.double({ min: 0, max: 40, noNaN: true }),
    start: fc.double({ min: 0, max: 60, noNaN: true }),
    turns: fc.array(fc.constantFrom(0, 90, 180, 270), { minLength: 9, maxLength: 9 }),
    mirrored: fc.array(fc.boolean(), { minLength: 9, maxLength: 9 }),
    labels: fc.array(fc.array(fc.string({ unit: 'grapheme', maxLength: 40 }), { maxLength: 4 }), {
      minLength: 9,
      maxLength: 9,
    }),
  })
  .map(({ width, height, margin, columns, rows, pieceWidth, pieceHeight, bleed, gutter, start, ...each }) =>
    page(
      width,
      height,
      margin,
      Array.from({ length: columns * rows }, (_, i) => {
        const outline = {
          x: margin + start + bleed + (i % columns) * (pieceWidth + 2 * bleed + gutter),
          y: margin + start + bleed + Math.floor(i / columns) * (pieceHeight + 2 * bleed + gutter),
          width: pieceWidth,
          height: pieceHeight,
        };
        const [turn, mirrored, label] = [each.turns[i]!, each.mirrored[i]!, each.labels[i]!];
        return piece(outline, bleed, { turn, mirrored, label });
      }),
    ),
  );

describe('the marks of any page', () => {
  it('touch no bleed, lie in the printable part, and do not overlap', () => {
    fc.assert(
      fc.property(anyPage, (request) => {
        const { drawing, shown } = layMarks(request);
        const boxes = shown.map(({ boxMm }) => boxMm);
        for (const item of drawing) {
          const box = boundsOf(item);
          if (box.width === 0 && box.height === 0) continue;
          expect(within(request.printableMm, box)).toBe(true);
          expect(request.pieces.some(({ bleedMm }) => overlap(bleedMm, box))).toBe(false);
          // All ink is within the box of one mark, so that marks whose boxes are apart are apart.
          expect(boxes.some((mark) => within(mark, box))).toBe(true);
        }
        boxes.forEach((one, i) => {
          expect(boxes.slice(i + 1).some((other) => overlap(one, other))).toBe(false);
        });
      }),
      { numRuns: 60 },
    );
  }, 120_000);

  it('are the same for the same request, and each is shown or dropped', () => {
    fc.assert(
      fc.property(anyPage, (request) => {
        const page = layMarks(request);
        expect(layMarks(structuredClone(request))).toEqual(page);
        const named = new Set([...page.shown, ...page.dropped].map(({ mark }) => mark));
        const labelled = request.pieces.some(({ label }) => label.length > 0);
        // Flat pieces are neither cut nor rolled by lines.
        const absent = MARK_KINDS.filter((kind) => !named.has(kind) && kind !== 'roll-lines');
        expect(absent).toEqual(labelled ? [] : ['label']);
      }),
      { numRuns: 20 },
    );
  }, 120_000);
});

describe('a tile on A3', () => {
  const { drawing, shown, dropped } = layMarks(tilePage);
  const boxesOf = (mark: string) => shown.filter((one) => one.mark === mark).map(({ boxMm }) => boxMm);

  it('has room for every mark', () => {
    expect(dropped).toEqual([]);
    // All but those of round bodies.
    expect(new Set(shown.map(({ mark }) => mark)).size).toBe(MARK_KINDS.length - 1);
  });

  it('has rulers of exactly 100 mm on both axes, ticks included', () => {
    const rulers = shown.filter(({ mark }) => mark === 'ruler');
    expect(rulers.map(({ axis, lengthMm }) => [axis, lengthMm])).toEqual([
      ['x', 100],
      ['y', 100],
    ]);
    for (const { axis, boxMm } of rulers) {
      const rects = drawing.flatMap((item) =>
        item.kind === 'rect' && within(boxMm, item.rectMm) ? [item.rectMm] : [],
      );
      const starts = rects.map((rect) => (axis === 'x' ? rect.x : rect.y));
      const ends = rects.map((rect) => (axis === 'x' ? rect.x + rect.width : rect.y + rect.height));
      expect(Math.max(...ends) - Math.min(...starts)).toBeCloseTo(100, 9);
      // The bar and eleven ticks; those within are about 10, 20 … 90.
      expect(rects.length).toBe(12);
      const middles = rects
        .map((_, i) => (starts[i]! + ends[i]!) / 2 - Math.min(...starts))
        .sort((one, other) => one - other);
      const inner = [10, 20, 30, 40, 50, 60, 70, 80, 90];
      const place = axis === 'x' ? middles : middles.map((middle) => 100 - middle).reverse();
      for (const at of inner) expect(place.some((middle) => Math.abs(middle - at) < 1e-9)).toBe(true);
    }
  });

  it('has a tick at the middle of each side, from 2 mm outside the bleed', () => {
    const solid = drawing.filter((item) => item.kind === 'line' && !item.dashesMm && item.widthMm === 0.25);
    const top = solid.find((item) => item.kind === 'line' && item.from.x === 148.5 && item.from.y < 110);
    expect(top).toMatchObject({ from: { x: 148.5, y: 105 }, to: { x: 148.5, y: 95 } });
    expect(shown.filter(({ mark }) => mark === 'centre-ticks').length).toBe(8);
  });

  it('has corner strokes in line with the outline, all outside the bleed', () => {
    expect(boxesOf('corner-marks').length).toBe(8);
    const xs = new Set(boxesOf('corner-marks').map((box) => Math.round((box.x + box.width / 2) * 10) / 10));
    expect([...xs].sort((one, other) => one - other)).toEqual([41, 48.5, 248.5, 256]);
  });

  it('has its label below the tile', () => {
    const [label] = boxesOf('label');
    expect(label!.y).toBeGreaterThanOrEqual(315);
    expect(label!.y).toBeLessThan(317);
  });
});

/** Without what adding up in another order loses. */
const rounded = (path: Path) =>
  path.map((command) =>
    command.map((part) => (typeof part === 'number' ? Number(part.toFixed(6)) + 0 : part)),
  );

describe('the mirror witness', () => {
  it('reads backwards for art that is mirrored, right for art that is not', () => {
    const pathOf = (mirrored: boolean) => {
      const [word] = mirrorWitness(mirrored).drawing;
      return word?.kind === 'path' ? word.path : [];
    };
    const set = (text: string) => letter(text, { capHeightMm: 4, at: { x: 0, y: 4.1 } });
    expect(rounded(pathOf(false))).toEqual(rounded(set('RIGHT WAY ROUND').path));
    const { path, widthMm } = set('WRONG WAY ROUND');
    const seenInAMirror = movePath(pathOf(true), { mirrored: true, by: { x: widthMm, y: 0 } });
    expect(rounded(seenInAMirror)).toEqual(rounded(path));
  });

  it('stands once for each kind of art on the page', () => {
    const two = page(300, 400, 5, [
      piece({ x: 20, y: 60, width: 80, height: 80 }, 3),
      piece({ x: 150, y: 60, width: 80, height: 80 }, 3, { mirrored: false }),
    ]);
    expect(layMarks(two).shown.filter(({ mark }) => mark === 'mirror-witness').length).toBe(2);
    expect(layMarks(tilePage).shown.filter(({ mark }) => mark === 'mirror-witness').length).toBe(1);
  });
});

describe('what is asked for', () => {
  it('a driver that mirrors gets the mirror image of the page, and marks keep their places on the paper', () => {
    const plain = layMarks(tilePage);
    const mirrored = layMarks({ ...tilePage, driverMirrors: true });
    expect(mirrored.shown).toEqual(plain.shown);
    expect(mirrored.drawing).toEqual(moveDrawing(plain.drawing, { mirrored: true, by: { x: 297, y: 0 } }));
  });

  it.each(MARK_KINDS)('%s can be left out', (kind) => {
    const { shown, dropped } = layMarks({ ...tilePage, without: [kind] });
    expect(shown.some(({ mark }) => mark === kind)).toBe(false);
    expect(dropped).toEqual([{ mark: kind, reason: 'off' }]);
  });

  it('pieces that say the same share a label, others have their own', () => {
    const labels = layMarks(tagPage).shown.filter(({ mark }) => mark === 'label');
    expect(labels.map(({ pieces }) => pieces?.length)).toEqual([24]);
    const two = page(300, 400, 5, [
      piece({ x: 20, y: 60, width: 80, height: 80 }, 3),
      piece({ x: 150, y: 60, width: 80, height: 80 }, 3, { label: ['pear.png', ...TILE_LABEL.slice(1)] }),
    ]);
    const own = layMarks(two).shown.filter(({ mark }) => mark === 'label');
    expect(own.map(({ pieces }) => pieces)).toEqual([[0], [1]]);
  });
});

describe('a label', () => {
  it('stands nearer to its own piece than to any other, where there is such room', () => {
    const pieces = [
      piece({ x: 30, y: 30, width: 60, height: 90 }, 3, { turn: 90 }),
      piece({ x: 115, y: 40, width: 70, height: 70 }, 3, { mirrored: false, label: ['quince.png'] }),
    ];
    const labels = layMarks(page(210, 297, 5, pieces)).shown.filter(({ mark }) => mark === 'label');
    labels.forEach(({ boxMm }, i) => {
      const away = pieces.map(({ bleedMm }) => distanceBetween(bleedMm, boxMm));
      expect(away[i]).toBeLessThan(away[1 - i]!);
    });
    expect(labels.length).toBe(2);
  });
});

describe('a page too full', () => {
  const rulersAt = (height: number) =>
    layMarks(page(220, height, 5, [piece({ x: 13, y: 13, width: 194, height: height - 46 }, 3)]));

  it('shortens a ruler, which says so, and drops it below 30 mm', () => {
    const { shown } = layMarks(page(80, 300, 5, [piece({ x: 13, y: 13, width: 54, height: 200 }, 3)]));
    expect(shown.find(({ axis }) => axis === 'x')).toMatchObject({ lengthMm: 70 });
    const narrow = layMarks(page(58, 300, 5, [piece({ x: 13, y: 13, width: 30, height: 200 }, 3)]));
    expect(narrow.shown.find(({ axis }) => axis === 'x')).toMatchObject({ lengthMm: 40 });
    const tooNarrow = layMarks(page(38, 300, 5, [piece({ x: 13, y: 13, width: 12, height: 200 }, 3)]));
    expect(tooNarrow.dropped).toContainEqual({ mark: 'ruler', axis: 'x', reason: 'no-room' });
  });

  it('loses the marks that are needed least first', () => {
    const { shown, dropped } = rulersAt(200);
    expect(shown.some(({ mark }) => mark === 'ruler')).toBe(true);
    expect(dropped.length).toBeGreaterThan(0);
    const ranks = dropped.map(({ mark }) => MARK_KINDS.indexOf(mark));
    expect(ranks).toEqual([...ranks].sort((one, other) => one - other));
  });

  it('has no marks at all where nothing can be printed', () => {
    const { drawing, dropped } = layMarks(
      page(20, 20, 10, [piece({ x: 2, y: 2, width: 16, height: 16 }, 3)]),
    );
    expect(drawing).toEqual([]);
    expect(new Set(dropped.map(({ reason }) => reason))).toEqual(new Set(['no-room']));
  });
});
