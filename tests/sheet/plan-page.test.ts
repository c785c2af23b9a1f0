import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { RectMm } from '../../src/geometry/rectangle.ts';
import { fitPage } from '../../src/sheet/fit-page.ts';
import { parsePaper } from '../../src/sheet/parse-paper.ts';
import { planPage, type SinglePiece } from '../../src/sheet/plan-page.ts';
import { equalMargins } from './equal-margins.ts';

const MARGINS = equalMargins({ left: 6.35, right: 6.35, top: 6.35, bottom: 6.35 });
const box = (x: number, y: number, width: number, height = width): RectMm => ({ x, y, width, height });
const px = (mm: number, ppi = 300) => Math.round((mm / 25.4) * ppi);
const pieceOf = (
  outline: number,
  bleed: number,
  printed: RectMm,
  more: Partial<SinglePiece> = {},
): SinglePiece => ({
  outlineMm: box(0, 0, outline),
  bleedMm: box(-bleed, -bleed, outline + 2 * bleed),
  printedMm: printed,
  widthPx: px(outline + 2 * bleed),
  heightPx: px(outline + 2 * bleed),
  mirrored: true,
  label: ['tag'],
  ...more,
});
const plan = (piece: SinglePiece, word = 'a4', more: object = {}) =>
  planPage(piece, fitPage(piece.printedMm, parsePaper(word), MARGINS)!, {
    paper: word,
    ppi: 300,
    scaleCorrection: { x: 1, y: 1 },
    driverMirrors: false,
    ...more,
  });
const middle = ({ x, width }: RectMm) => x + width / 2;
/** A pixel at 300 ppi. */
const PIXEL_MM = 25.4 / 300;

describe('planPage', () => {
  it('puts the piece into the middle, on whole pixels, with its outline within its bleed', () => {
    const { pieces, widthPx, heightPx, sizeMm } = plan(pieceOf(100, 3, box(0, 0, 100)));
    expect([widthPx, heightPx]).toEqual([px(210), px(297)]);
    expect(sizeMm).toEqual({ width: 210, height: 297 });
    const [{ xPx, yPx, outlineMm, bleedMm }] = pieces as [(typeof pieces)[0]];
    expect([xPx, yPx].every(Number.isInteger)).toBe(true);
    expect(Math.abs(middle(outlineMm) - 105)).toBeLessThanOrEqual(PIXEL_MM);
    expect(outlineMm.x - bleedMm.x).toBeCloseTo(3, 9);
    expect(outlineMm.y - bleedMm.y).toBeCloseTo(3, 9);
    expect([outlineMm.width, bleedMm.width]).toEqual([100, 106]);
  });

  it('lets white padding overhang and keeps the ink in the printable part, seen from the paper', () => {
    // 60 mm of ink on the left of a blank of 200 mm: mirrored, it lies on the right.
    const printed = box(10, 70, 60);
    for (const mirrored of [true, false]) {
      const piece = pieceOf(200, 3, printed, { mirrored });
      const [place] = plan(piece, 'a6').pieces;
      const inkX = place!.outlineMm.x + (mirrored ? 200 - 10 - 60 : 10);
      expect(Math.abs(inkX + 30 - 105 / 2)).toBeLessThanOrEqual(PIXEL_MM);
      expect(Math.abs(place!.outlineMm.y + 100 - 148 / 2)).toBeLessThanOrEqual(PIXEL_MM);
      expect(place!.xPx).toBe(Math.round((place!.bleedMm.x / 25.4) * 300));
    }
  });

  it('sends a driver that mirrors the mirror image of what shall be on the paper', () => {
    const piece = pieceOf(200, 3, box(10, 70, 60));
    const plain = plan(piece, 'a6');
    const mirrored = plan(piece, 'a6', { driverMirrors: true });
    expect(mirrored.pieces[0]!.outlineMm).toEqual(plain.pieces[0]!.outlineMm);
    expect(mirrored.pieces[0]!.xPx).toBe(plain.widthPx - plain.pieces[0]!.xPx - piece.widthPx);
  });

  it('makes up for a corrected scale by the density, so that page and piece come out at their size', () => {
    // The printer makes 99.6 mm of 100 along the feed: the page that it is sent is 297 mm, on the paper 1 / 1.004 of it.
    const correction = { x: 1, y: 1.004 };
    const { heightPx, densityPpi, widthPx } = plan(pieceOf(100, 3, box(0, 0, 100)), 'a4', {
      scaleCorrection: correction,
    });
    expect(widthPx).toBe(px(210));
    expect((heightPx / densityPpi.y) * 25.4).toBeCloseTo(297, 1);
    // 100 mm of the piece, as they are sent and as they come out.
    const sentMm = (px(100) / densityPpi.y) * 25.4;
    expect(sentMm / 1.004).toBeCloseTo(100, 1);
  });

  it('keeps every mark off the bleed and within the printable part', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 20, max: 190 }),
        fc.integer({ min: 20, max: 260 }),
        fc.boolean(),
        (width, height, mirrored) => {
          const piece = pieceOf(10, 3, box(-3, -3, width + 6, height + 6), {
            outlineMm: box(0, 0, width, height),
            bleedMm: box(-3, -3, width + 6, height + 6),
            widthPx: px(width + 6),
            heightPx: px(height + 6),
            mirrored,
          });
          const { marks, pieces, printableMm } = plan(piece);
          const { bleedMm } = pieces[0]!;
          for (const { boxMm } of marks.shown) {
            expect(boxMm.x).toBeGreaterThanOrEqual(printableMm.x - 1e-6);
            expect(boxMm.y + boxMm.height).toBeLessThanOrEqual(printableMm.y + printableMm.height + 1e-6);
            const apart =
              boxMm.x >= bleedMm.x + bleedMm.width ||
              boxMm.x + boxMm.width <= bleedMm.x ||
              boxMm.y >= bleedMm.y + bleedMm.height ||
              boxMm.y + boxMm.height <= bleedMm.y;
            expect(apart).toBe(true);
          }
        },
      ),
      { numRuns: 25 },
    );
  });
});
