import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { distanceBetween } from '../../../src/sheet/marks/distance-between.ts';
import { MARK_KINDS } from '../../../src/sheet/marks/mark-kinds.ts';
import { planSheets } from '../../../src/sheet/several/plan-sheets.ts';
import { seededNumbers } from '../../pictures.ts';
import { A4, copies, expectLawful, PIXEL_MM, PLAIN, pieceOf } from './sheets-law.ts';

describe('planSheets', () => {
  it('keeps count, margins and gutter, turns only what may be turned, and pairs on one page', () => {
    const piece = fc.record({
      width: fc.integer({ min: 8, max: 90 }),
      height: fc.integer({ min: 8, max: 90 }),
      mayTurn: fc.boolean(),
      pair: fc.boolean(),
    });
    fc.assert(
      fc.property(
        fc.array(piece, { minLength: 1, maxLength: 14 }),
        fc.constantFrom(0, 0.3, 0.6, 3, 7.5),
        fc.constantFrom(null, { width: 150, height: 200 }),
        fc.constantFrom({ scan: 1, feed: 1 }, { scan: 1.006, feed: 0.995 }),
        fc.boolean(),
        (wanted, gutterMm, platenMm, scaleCorrection, driverMirrors) => {
          const pieces = wanted.flatMap(({ width, height, mayTurn, pair }, group) => {
            const first = pieceOf(width, height, { mayTurn, group });
            return pair ? [first, { ...first, mirrored: false }] : [first];
          });
          const request = { ...A4, gutterMm, platenMm, scaleCorrection };
          const plan = planSheets(pieces, request, { driverMirrors, without: ['label', 'step-wedge'] });
          expectLawful(plan, pieces, request, driverMirrors);
          expect(planSheets(pieces, request, { driverMirrors, without: ['label', 'step-wedge'] })).toEqual(
            plan,
          );
        },
      ),
      { numRuns: 40 },
    );
  });

  it('lays the two of a pair a gutter apart', () => {
    const pieces = Array.from({ length: 12 }, (_, at) => pieceOf(20, 30, { group: at >> 1 }));
    const { sheets } = planSheets(pieces, A4, PLAIN);
    expect(sheets).toHaveLength(1);
    const { page, pieces: lying } = sheets[0]!;
    for (let pair = 0; pair < 6; pair++) {
      const [one, other] = [2 * pair, 2 * pair + 1].map((piece) => page.pieces[lying.indexOf(piece)]!);
      const gap = distanceBetween(one!.bleedMm, other!.bleedMm);
      const nearest = Math.min(
        ...page.pieces
          .filter((place) => place !== one)
          .map(({ bleedMm }) => distanceBetween(one!.bleedMm, bleedMm)),
      );
      // Pictures are whole pixels, what they hold is not.
      expect(gap).toBeLessThan(nearest + PIXEL_MM);
    }
  });

  it('takes the roomy way where it needs no more pages: no mark of a few pieces is dropped', () => {
    const { sheets } = planSheets(copies(4, pieceOf(40, 40)), A4, PLAIN);
    expect(sheets).toHaveLength(1);
    expect(sheets[0]!.page.marks.dropped).toEqual([]);
  });

  it('takes the exact grid count where pages are full, and drops marks for it', () => {
    // 46 mm with the bleed and 3 mm between: four across 197.3 mm, five (of 49 mm) down 284.3 mm.
    const full = planSheets(copies(20, pieceOf(40, 46)), A4, PLAIN);
    expect(full.sheets).toHaveLength(1);
    expect(full.sheets[0]!.page.marks.dropped.length).toBeGreaterThan(0);
    expect(planSheets(copies(21, pieceOf(40, 46)), A4, PLAIN).sheets).toHaveLength(2);
  });

  it('gives a piece whose picture is too large a page of its own where its ink is not; else it is left out', () => {
    const large = pieceOf(203, 203);
    const inked = { ...large, printedMm: { x: 12, y: 12, width: 178, height: 178 } };
    const both = planSheets([inked, { ...large, group: 1 }, pieceOf(50, 50, { group: 2 })], A4, PLAIN);
    expect(both.sheets.map(({ pieces }) => pieces)).toEqual([[2], [0]]);
    expect(both.leftOut).toEqual([{ piece: 1, reason: 'larger-than-page' }]);
    const platenMm = { width: 100, height: 150 };
    const pressed = planSheets(copies(2, pieceOf(120, 160)), { ...A4, platenMm }, PLAIN);
    expect(pressed.leftOut.map(({ reason }) => reason)).toEqual(['larger-than-platen', 'larger-than-platen']);
  });

  it('packs a pair that no page takes piece by piece, and names it', () => {
    const pieces = [pieceOf(180, 180), pieceOf(180, 180)];
    const { sheets, apart, leftOut } = planSheets(pieces, A4, PLAIN);
    expect([sheets.length, apart, leftOut]).toEqual([2, [0], []]);
  });

  it.each([
    ['whole millimetres', 1],
    ['64ths of an inch', 64 / 25.4],
    ['lengths of any kind', null],
  ])(
    'of sets that were cut from whole pages in %s, gutters sawn away, makes at most 1.05 times as many pages',
    (_, perMm) => {
      let cut = 0;
      let needed = 0;
      for (let seed = 1; seed <= 16; seed += 1) {
        const { sizes, sheets } = cutSheets(seed, A4.gutterMm, perMm);
        const pieces = sizes.map(([width, height], group) =>
          pieceOf(width - 6, height - 6, { group, mayTurn: seed % 2 === 0 }),
        );
        const plan = planSheets(pieces, A4, { ...PLAIN, without: MARK_KINDS });
        expect(plan.leftOut).toEqual([]);
        cut += sheets;
        needed += plan.sheets.length;
      }
      expect(needed / cut).toBeLessThanOrEqual(1.05);
    },
  );
});

/**
 * One to eight printable parts of A4, each sawn across or along, again and again, into 3 to 12 pieces of at least 25 mm; in
 * any order. Cuts lie at whole parts of a millimetre, where these are given.
 */
function cutSheets(seed: number, sawMm: number, perMm: number | null) {
  const random = seededNumbers(Math.imul(seed, 2654435761));
  const least = 25;
  const sheets = 1 + Math.floor(random() * 8);
  const sizes: (readonly [number, number])[] = [];
  for (let sheet = 0; sheet < sheets; sheet += 1) {
    const parts: (readonly [number, number])[] = [[210 - 2 * 6.35, 297 - 2 * 6.35]];
    const wanted = 3 + Math.floor(random() * 10);
    for (let tries = 0; tries < 100 && parts.length < wanted; tries += 1) {
      const at = Math.floor(random() * parts.length);
      const [width, height] = parts[at]!;
      const across = random() < width / (width + height);
      const long = (across ? width : height) - sawMm;
      if (long < 2 * least) continue;
      const anywhere = least + random() * (long - 2 * least);
      const first = perMm === null ? anywhere : Math.ceil(anywhere * perMm) / perMm;
      const halfOf = (half: number): readonly [number, number] => (across ? [half, height] : [width, half]);
      parts.splice(at, 1, halfOf(first), halfOf(long - first));
    }
    sizes.push(...parts);
  }
  for (let last = sizes.length - 1; last > 0; last -= 1) {
    const other = Math.floor(random() * (last + 1));
    [sizes[last], sizes[other]] = [sizes[other]!, sizes[last]!];
  }
  return { sizes, sheets };
}
