import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { COST_INPUTS, type CostInputs, readCostInputs } from '../../src/costing/cost-inputs.ts';
import { COST_PARTS, costOfPiece } from '../../src/costing/cost-of-piece.ts';

/** A tile of 206 x 206 mm with its bleed, half covered. */
const INK = { coverage: 0.5, areaMm2: 206 * 206 };
const ALL = [
  'blank=2.50',
  'freight=0.40',
  'paperSheet=0.60',
  'piecesPerSheet=2',
  'inkPerMl=0.80',
  'protection=0.10',
  'labourMin=5',
  'labourPerHour=18',
  'energyKwh=0.1',
  'energyPerKwh=0.30',
  'packaging=0.70',
  'overhead=0.50',
  'scrapRate=5%',
  'sellingFees=1.20',
];

describe('the cost of a good piece', () => {
  it('is, worked by hand, 7.95 for a half covered tile', () => {
    const cost = costOfPiece(readCostInputs(ALL), INK);
    // 0.5 x 0.042436 m2 x 19 ml/m2 = 0.403142 ml, and a fifth more: 0.4837704 ml, at 0.80 each 0.38701632.
    expect(cost.ink.ml).toBeCloseTo(0.4837704, 9);
    // 2.50 + 0.40 + 0.60/2 + 0.38701632 + 0.10 + 18 x 5/60 + 0.1 x 0.30 + 0.70 + 0.50 = 6.41701632
    const made = cost.parts.filter(({ part }) => part !== 'sellingFees').map(({ amount }) => amount);
    expect(made.reduce((sum, amount) => sum + amount)).toBeCloseTo(6.41701632, 9);
    // 6.41701632 / 0.95 + 1.20
    expect(cost.perGoodPiece).toBeCloseTo(7.954754, 6);
    expect([cost.parts.map(({ part }) => part), cost.leftOut]).toEqual([COST_PARTS, []]);
  });

  it('counts nothing as free: what has no price, or half of one, is left out by name', () => {
    const cost = costOfPiece(readCostInputs(['blank=2', 'labourMin=5', 'energyPerKwh=0.3']), INK);
    expect(cost).toMatchObject({ perGoodPiece: 2, parts: [{ part: 'blank', amount: 2 }], scrapRate: 0 });
    expect(cost.leftOut).toEqual([...COST_PARTS.filter((part) => part !== 'blank'), 'scrap']);
    expect(costOfPiece({}, INK)).toMatchObject({ perGoodPiece: null, parts: [] });
    expect(costOfPiece({}, INK).ink.ml).toBeGreaterThan(0);
    expect(costOfPiece(readCostInputs(['freight=0']), INK).leftOut).not.toContain('freight');
  });

  it('grows with every amount and with scrap, and doubles with all amounts (laws)', () => {
    const amounts = Object.entries(COST_INPUTS).flatMap(([name, { kind }]) =>
      kind === 'amount' ? [name] : [],
    );
    const anyInputs = fc.record(
      Object.fromEntries(
        Object.keys(COST_INPUTS).map((name) => [name, fc.double({ min: 0.01, max: 0.9, noNaN: true })]),
      ),
    ) as fc.Arbitrary<Required<CostInputs>>;
    fc.assert(
      fc.property(anyInputs, fc.constantFrom(...amounts, 'scrapRate'), (inputs, name) => {
        const before = costOfPiece(inputs, INK).perGoodPiece!;
        const more = { ...inputs, [name]: inputs[name as keyof CostInputs]! * 1.1 };
        expect(costOfPiece(more, INK).perGoodPiece).toBeGreaterThan(before);
        const twice = Object.fromEntries(
          Object.entries(inputs).map(([key, value]) => [key, amounts.includes(key) ? value * 2 : value]),
        );
        expect(costOfPiece(twice, INK).perGoodPiece).toBeCloseTo(2 * before, 6);
      }),
    );
  });
});

describe('cost inputs', () => {
  it('are numbers; shares may be percentages; the last word for a name counts', () => {
    expect(readCostInputs(['scrapRate=5%', 'hiddenInk=0.1', 'blank=1', 'blank=2.5', 'labourMin=4'])).toEqual({
      scrapRate: 0.05,
      hiddenInk: 0.1,
      blank: 2.5,
      labourMin: 4,
    });
  });

  it.each([
    'blank',
    'blank=',
    'blank=-1',
    'blank=2,50',
    'blank=$2.50',
    'blank=5%',
    'piecesPerSheet=0',
    'scrapRate=1',
    'scrapRate=100%',
    'blnak=2',
    'toString=2',
    '',
  ])('%j is refused', (word) => {
    expect(() => readCostInputs([word])).toThrow(
      expect.objectContaining({ code: 'bad-cost', kind: 'usage' }),
    );
  });
});
