import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { distanceBetween } from '../../../src/sheet/marks/distance-between.ts';
import { MARK_KINDS } from '../../../src/sheet/marks/mark-kinds.ts';
import type { SheetsRequest } from '../../../src/sheet/several/page-ways.ts';
import { planSheets, type SheetsPlan } from '../../../src/sheet/several/plan-sheets.ts';
import { seededNumbers } from '../../pictures.ts';
import { A4, copies, expectLawful, PLAIN, pieceOf } from './sheets-law.ts';

const MARGIN_MM = 6.35;
const ROLL: SheetsRequest = { ...A4, paper: { id: 'roll-610mm', widthMm: 610, heightMm: null } };
const BARE = { ...PLAIN, without: MARK_KINDS } as const;

/** Of the paper used, page by page. */
const lengthsOf = ({ sheets }: SheetsPlan) =>
  sheets.map(({ page: { sizeMm, orientation } }) =>
    orientation === 'portrait' ? sizeMm.height : sizeMm.width,
  );

describe('pieces on a roll', () => {
  it('keep count, margins, gutter, turns, pairs and the platen; each page ends a millimetre after its ink at most', () => {
    const piece = fc.record({
      width: fc.integer({ min: 8, max: 150 }),
      height: fc.integer({ min: 8, max: 150 }),
      mayTurn: fc.boolean(),
      pair: fc.boolean(),
    });
    fc.assert(
      fc.property(
        fc.array(piece, { minLength: 1, maxLength: 20 }),
        fc.constantFrom(0, 0.6, 3),
        fc.constantFrom(null, { width: 350, height: 380 }),
        fc.constantFrom({ scan: 1, feed: 1 }, { scan: 1.006, feed: 0.995 }),
        fc.constantFrom(400, 5000),
        fc.boolean(),
        (wanted, gutterMm, platenMm, scaleCorrection, longestMm, bare) => {
          const pieces = wanted.flatMap(({ width, height, mayTurn, pair }, group) => {
            const first = pieceOf(width, height, { mayTurn, group });
            return pair ? [first, { ...first, mirrored: false }] : [first];
          });
          const request = { ...ROLL, gutterMm, platenMm, scaleCorrection, longestMm };
          const plan = planSheets(pieces, request, bare ? BARE : PLAIN);
          expectLawful(plan, pieces, request, false);
          for (const { page } of plan.sheets) {
            const upright = page.orientation === 'portrait';
            const [across, along] = upright
              ? [page.sizeMm.width * scaleCorrection.scan, page.sizeMm.height * scaleCorrection.feed]
              : [page.sizeMm.height * scaleCorrection.scan, page.sizeMm.width * scaleCorrection.feed];
            expect(across).toBeCloseTo(610, 9);
            expect(along).toBeLessThanOrEqual(longestMm);
            const ends = [...page.pieces, ...page.marks.shown.map(({ boxMm }) => ({ bleedMm: boxMm }))].map(
              ({ bleedMm: { x, y, width, height } }) => (upright ? y + height : x + width),
            );
            const printable = page.printableMm;
            const last = upright ? printable.y + printable.height : printable.x + printable.width;
            // What is kept for marks at the edges, where some are wanted; of whole pixels, up to two more.
            const keptMm = bare ? 0 : 14;
            expect(last - Math.max(...ends)).toBeLessThanOrEqual(1.01 + keptMm + 2 * (25.4 / request.ppi));
          }
          expect(planSheets(pieces, request, bare ? BARE : PLAIN)).toEqual(plan);
        },
      ),
      { numRuns: 30 },
    );
  });

  /** The shorter of two grids: of 46 x 52 mm and 3 mm between, twelve lie across 597.3 mm, sideways ten. */
  const gridMm = (count: number) =>
    Math.ceil(2 * MARGIN_MM - 3 + Math.min(Math.ceil(count / 12) * 55, Math.ceil(count / 10) * 49));

  it.each([12, 13, 60, 61])('of %d alike take exactly as much as the shorter of two grids', (count) => {
    expect(lengthsOf(planSheets(copies(count, pieceOf(40, 46)), ROLL, BARE))).toEqual([gridMm(count)]);
  });

  it('lie along it where that is shorter and they may not be turned otherwise', () => {
    // Of 490 x 100 mm: one above the other across it, or five and more side by side along it.
    const long = pieceOf(484, 94);
    const plan = planSheets(copies(5, long), ROLL, BARE);
    expect(plan.sheets[0]!.page.orientation).toBe('landscape');
    expect(lengthsOf(plan)).toEqual([Math.ceil(2 * MARGIN_MM + 490)]);
    const one = planSheets(copies(2, long), ROLL, BARE);
    expect(one.sheets[0]!.page.orientation).toBe('portrait');
    expect(lengthsOf(one)).toEqual([Math.ceil(2 * MARGIN_MM + 203)]);
  });

  it('keep the marks along the edges, and more of them where that makes the page no longer', () => {
    const few = planSheets(copies(4, pieceOf(60, 60)), ROLL, PLAIN);
    const { page } = few.sheets[0]!;
    expect(
      page.marks.dropped.filter(({ mark }) => mark !== 'centre-ticks' && mark !== 'corner-marks'),
    ).toEqual([]);
    // Every second side of two next to each other has its tick: they lie further apart than the gutter asks.
    expect(page.marks.shown.filter(({ mark }) => mark === 'centre-ticks').length).toBeGreaterThan(8);
    const [first, ...rest] = page.pieces.map(({ bleedMm }) => bleedMm);
    expect(Math.min(...rest.map((other) => distanceBetween(first!, other)))).toBeGreaterThanOrEqual(10);
  });

  it('too many for the longest page go on as few as they need', () => {
    // Seven rows of twelve: 7 * 55 - 3 + 12.7 mm; eight would be 449.7.
    const plan = planSheets(copies(100, pieceOf(40, 46)), { ...ROLL, longestMm: 400 }, BARE);
    expect(plan.sheets.map(({ pieces }) => pieces.length)).toEqual([84, 16]);
    expect(lengthsOf(plan)).toEqual([gridMm(84), gridMm(16)]);
  });

  it('too wide for the roll and too long for a page are left out', () => {
    const plan = planSheets([pieceOf(620, 650)], { ...ROLL, longestMm: 600 }, BARE);
    expect(plan.leftOut).toEqual([{ piece: 0, reason: 'larger-than-page' }]);
  });

  it('sawn from whole lengths of it take at most 1.05 times as much of it', () => {
    let sawn = 0;
    let taken = 0;
    for (let seed = 1; seed <= 16; seed += 1) {
      const { sizes, alongMm } = sawRoll(seed);
      const pieces = sizes.map(([width, height], group) =>
        pieceOf(width - 6, height - 6, { group, mayTurn: seed % 2 === 0 }),
      );
      sawn += alongMm + 2 * MARGIN_MM;
      taken += lengthsOf(planSheets(pieces, ROLL, BARE)).reduce((sum, length) => sum + length, 0);
    }
    expect(taken / sawn).toBeLessThanOrEqual(1.05);
  });
});

/** 300 to 1500 mm of the printable part, sawn across or along, again and again, into 4 to 40 pieces of at least 25 mm. */
function sawRoll(seed: number) {
  const random = seededNumbers(Math.imul(seed, 2654435761));
  const least = 25;
  const alongMm = 300 + random() * 1200;
  const sizes: (readonly [number, number])[] = [[610 - 2 * MARGIN_MM, alongMm]];
  const wanted = 4 + Math.floor(random() * 37);
  for (let tries = 0; tries < 400 && sizes.length < wanted; tries += 1) {
    const at = Math.floor(random() * sizes.length);
    const [width, height] = sizes[at]!;
    const across = random() < width / (width + height);
    const long = (across ? width : height) - ROLL.gutterMm;
    if (long < 2 * least) continue;
    const first = least + random() * (long - 2 * least);
    const halfOf = (half: number): readonly [number, number] => (across ? [half, height] : [width, half]);
    sizes.splice(at, 1, halfOf(first), halfOf(long - first));
  }
  return { sizes: sizes.toSorted(([one], [other]) => one - other), alongMm };
}
