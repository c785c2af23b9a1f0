import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { deltaE2000 } from '../../src/colour/delta-e-2000.ts';
import type { Triple } from '../../src/colour/triple.ts';
import { readReferenceTable } from './reference-table.ts';

const PAIRS = readReferenceTable('ciede2000-pairs.tsv');

const anyLab: fc.Arbitrary<Triple> = fc.tuple(
  fc.double({ min: 0, max: 100, noNaN: true }),
  fc.double({ min: -128, max: 128, noNaN: true }),
  fc.double({ min: -128, max: 128, noNaN: true }),
);

describe('deltaE2000', () => {
  // Sharma, Wu, Dalal, Color Research & Application 30(1), 2005: printed with four decimals, so half of the last.
  it.each(PAIRS.map((row) => [row.number('pair'), row] as const))(
    'published pair %i, both ways round',
    (_, row) => {
      const first = row.triple('L1', 'a1', 'b1');
      const second = row.triple('L2', 'a2', 'b2');
      expect(Math.abs(deltaE2000(first, second) - row.number('dE00'))).toBeLessThanOrEqual(0.00005);
      expect(Math.abs(deltaE2000(second, first) - row.number('dE00'))).toBeLessThanOrEqual(0.00005);
    },
  );

  it('has all 34 pairs', () => expect(PAIRS).toHaveLength(34));

  it('is 0 for a colour and itself, and at most rounding apart both ways round', () => {
    fc.assert(
      fc.property(anyLab, anyLab, (first, second) => {
        expect(deltaE2000(first, first)).toBe(0);
        expect(deltaE2000(first, second)).toBeGreaterThanOrEqual(0);
        expect(Math.abs(deltaE2000(first, second) - deltaE2000(second, first))).toBeLessThan(1e-9);
      }),
      { seed: 2000, numRuns: 2000 },
    );
  });

  // L* 50 against 51, both gray: SL is 1 + 0.015 * 0.25 / sqrt(20.25), worked by hand.
  it('of two grays is the lightness step over its weight', () => {
    expect(deltaE2000([50, 0, 0], [51, 0, 0])).toBeCloseTo(1 / (1 + (0.015 * 0.25) / Math.sqrt(20.25)), 12);
  });
});
