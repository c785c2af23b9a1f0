import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { RoundBand } from '../../../src/geometry/development.ts';
import { laySector } from '../../../src/geometry/laid-sector.ts';
import { MARK_KINDS } from '../../../src/sheet/marks/mark-kinds.ts';
import type { SheetsRequest } from '../../../src/sheet/several/page-ways.ts';
import { planSheets, type SheetsPlan } from '../../../src/sheet/several/plan-sheets.ts';
import type { SheetPiece } from '../../../src/sheet/several/sheet-piece.ts';
import { outlineDistance, outlineOf, slackOf } from '../../geometry/outline-distance.ts';
import { arcPieceOf, byBoxes } from './arc-pieces.ts';
import { A4, copies, PIXEL_MM, PLAIN, pieceOf } from './sheets-law.ts';

const A3 = { id: 'a3', widthMm: 297, heightMm: 420 };
const ROLL = { id: 'roll-610mm', widthMm: 610, heightMm: null };
const BARE = { ...PLAIN, without: MARK_KINDS } as const;
const STEPS = 160;

/** What is inked of the pieces of each page, as polygons. */
function outlinesOf({ sheets }: SheetsPlan, pieces: readonly SheetPiece[]) {
  return sheets.map(({ page, pieces: lying }) =>
    page.pieces.map(({ bleedMm }, at) => {
      const { arc } = pieces[lying[at]!]!;
      return outlineOf(arc!, laySector(arc!, bleedMm).apexMm, STEPS);
    }),
  );
}

const isNested = ({ sheets }: SheetsPlan) =>
  sheets.some(({ page }) => page.pieces.some(({ partMm }) => partMm));
const paperOf = ({ sheets }: SheetsPlan) =>
  sheets.reduce((sum, { page: { sizeMm } }) => sum + sizeMm.width * sizeMm.height, 0);

const bands = fc
  .record({
    wideMm: fc.double({ min: 40, max: 110, noNaN: true }),
    share: fc.double({ min: 0.1, max: 0.9, noNaN: true }),
    heightMm: fc.double({ min: 15, max: 120, noNaN: true }),
    below: fc.boolean(),
  })
  .filter(({ wideMm, share, heightMm }) => {
    const difference = wideMm * (1 - share);
    return (Math.PI * difference) / Math.hypot(heightMm, difference / 2) < 5;
  })
  .map(({ wideMm, share, heightMm, below }): RoundBand => {
    const [wide, narrow] = [wideMm, wideMm * share];
    return below
      ? { topDiameterMm: narrow, bottomDiameterMm: wide, heightMm }
      : { topDiameterMm: wide, bottomDiameterMm: narrow, heightMm };
  });

describe('arcs on a sheet', () => {
  it('are all there, in the printable part, no two nearer than the gutter, on no more paper than by their boxes', () => {
    let nested = 0;
    fc.assert(
      fc.property(
        bands,
        fc.integer({ min: 2, max: 7 }),
        fc.constantFrom(0, 0.6, 3, 8),
        fc.constantFrom(A3, { ...ROLL, widthMm: 330 }, { ...ROLL, widthMm: 432 }),
        fc.constantFrom({ scan: 1, feed: 1 }, { scan: 1.006, feed: 0.995 }),
        fc.boolean(),
        fc.boolean(),
        (band, count, gutterMm, paper, scaleCorrection, driverMirrors, bare) => {
          const piece = arcPieceOf(band);
          const pieces = copies(count, piece);
          const request: SheetsRequest = { ...A4, paper, gutterMm, scaleCorrection };
          const options = { driverMirrors, without: bare ? MARK_KINDS : (['label', 'ruler'] as const) };
          const plan = planSheets(pieces, request, options);
          const boxes = planSheets(byBoxes(pieces), request, options);
          expect(planSheets(pieces, request, options)).toEqual(plan);
          if (!isNested(plan)) {
            expect(plan).toEqual(boxes);
            return;
          }
          nested += 1;
          expect(plan.leftOut).toEqual([]);
          expect(plan.sheets.flatMap((sheet) => sheet.pieces)).toEqual([...pieces.keys()]);
          expect(plan.sheets.length).toBeLessThanOrEqual(boxes.sheets.length);
          expect(paperOf(plan)).toBeLessThan(paperOf(boxes));
          const slackMm = 2 * slackOf(piece.arc!, STEPS) + 1e-5;
          for (const [number, outlines] of outlinesOf(plan, pieces).entries()) {
            const { printableMm } = plan.sheets[number]!.page;
            for (const [at, outline] of outlines.entries()) {
              for (const { x, y } of outline) {
                expect(x).toBeGreaterThanOrEqual(printableMm.x - PIXEL_MM / 2);
                expect(y).toBeGreaterThanOrEqual(printableMm.y - PIXEL_MM / 2);
                expect(x).toBeLessThanOrEqual(printableMm.x + printableMm.width + PIXEL_MM / 2);
                expect(y).toBeLessThanOrEqual(printableMm.y + printableMm.height + PIXEL_MM / 2);
              }
              for (const other of outlines.slice(at + 1))
                expect(outlineDistance(outline, other)).toBeGreaterThanOrEqual(gutterMm - slackMm);
            }
          }
        },
      ),
      // How many are nested is counted below: not left to chance.
      { numRuns: 30, seed: 20_261_127 },
    );
    expect(nested).toBeGreaterThan(2);
  });

  it('keep every mark off the ink of all: 2 mm, lines of their own too, and lines of one off those of another', () => {
    const piece = arcPieceOf({ topDiameterMm: 110, bottomDiameterMm: 70, heightMm: 50 });
    const pieces = copies(5, piece);
    const plan = planSheets(pieces, { ...A4, paper: ROLL, gutterMm: 6 }, PLAIN);
    expect(isNested(plan)).toBe(true);
    const { page } = plan.sheets[0]!;
    const outlines = outlinesOf(plan, pieces)[0]!;
    let lines = 0;
    for (const item of page.marks.drawing) {
      if (item.kind !== 'line') continue;
      lines += 1;
      for (const outline of outlines)
        expect(outlineDistance([item.from, item.to], outline)).toBeGreaterThan(
          2 - 0.01 - slackOf(piece.arc!, STEPS),
        );
    }
    expect(lines).toBeGreaterThan(150);
    for (const [at, one] of page.marks.shown.entries()) {
      const corners = cornersOf(one.boxMm);
      if (one.mark !== 'roll-lines')
        for (const outline of outlines) expect(outlineDistance(corners, outline)).toBeGreaterThan(1.9);
      for (const other of page.marks.shown.slice(at + 1))
        if (one.piece !== other.piece)
          expect(outlineDistance(corners, cornersOf(other.boxMm))).toBeGreaterThan(0.7);
    }
    // Each piece keeps what it is cut by where there is room: far more than its box alone would leave of it.
    for (const at of pieces.keys())
      expect(
        page.marks.shown.filter(({ mark, piece }) => mark === 'roll-lines' && piece === at).length,
      ).toBeGreaterThan(20);
  });

  it('stay as they were packed where they differ, belong together, or are something else', () => {
    const band = { topDiameterMm: 110, bottomDiameterMm: 70, heightMm: 50 };
    const equal = copies(6, arcPieceOf(band));
    const request = { ...A4, paper: ROLL };
    expect(isNested(planSheets(equal, request, BARE))).toBe(true);
    const other = arcPieceOf({ ...band, heightMm: 51 }, { group: 9 });
    for (const pieces of [
      [...equal, other],
      [...equal, pieceOf(40, 40, { group: 9 })],
      equal.map((piece, at) => ({ ...piece, group: at >> 1 })),
      byBoxes(equal),
    ]) {
      const plan = planSheets(pieces, request, BARE);
      expect(isNested(plan)).toBe(false);
      expect(plan).toEqual(planSheets(byBoxes(pieces), request, BARE));
    }
  });
});

function cornersOf({ x, y, width, height }: { x: number; y: number; width: number; height: number }) {
  return [
    { x, y },
    { x: x + width, y },
    { x: x + width, y: y + height },
    { x, y: y + height },
  ];
}
