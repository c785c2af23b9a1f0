import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { roundBeside, roundNumber, roundNumbers } from '../../src/reports/round-numbers.ts';

const lengths = fc.double({ min: -10_000, max: 10_000, noNaN: true });

describe('roundNumber', () => {
  it('drops the noise of doubles', () => {
    expect(roundNumber(0.1 + 0.2)).toBe(0.3);
    expect(roundNumber(0.1 + 0.2 - 0.3)).toBe(0);
    expect(Object.is(roundNumber(-1e-9), 0)).toBe(true);
  });

  it('moves no number by more than half a millionth, and a rounded one not at all', () => {
    fc.assert(
      fc.property(lengths, (value) => {
        // 1e-12: the spacing of doubles at 10 000 is 1.8e-12.
        expect(Math.abs(roundNumber(value) - value)).toBeLessThanOrEqual(0.5e-6 + 2e-12);
        expect(roundNumber(roundNumber(value))).toBe(roundNumber(value));
      }),
      { seed: 20_240_301 },
    );
  });

  it('keeps whole numbers, also those beyond any picture', () => {
    expect(roundNumber(268_402_689)).toBe(268_402_689);
    expect(roundNumber(Number.MAX_SAFE_INTEGER)).toBe(Number.MAX_SAFE_INTEGER);
  });
});

describe('roundNumbers', () => {
  it('rounds at every depth, keeps order and all else, and changes nothing in place', () => {
    const data = { z: 0.1 + 0.2, a: [{ b: 'x', c: true, d: null }, 1.00000049] };
    const rounded = roundNumbers(data);
    expect(JSON.stringify(rounded)).toBe('{"z":0.3,"a":[{"b":"x","c":true,"d":null},1]}');
    expect(data.z).toBe(0.1 + 0.2);
  });
});

describe('roundBeside', () => {
  it('keeps a value that rounding would carry across its limit', () => {
    const expected = { min: 3, unit: 'mm', from: 'blank:a' } as const;
    expect(roundBeside({ value: 2.9999999, unit: 'mm' }, expected).actual.value).toBe(2.9999999);
    expect(roundBeside({ value: 2.99999949, unit: 'mm' }, expected).actual.value).toBe(2.999999);
    expect(roundBeside({ value: 3.0000001, unit: 'mm' }, expected).actual.value).toBe(3);
  });

  it('never changes on which side of its limits a value stands', () => {
    const near = fc.double({ min: -2e-6, max: 2e-6, noNaN: true });
    fc.assert(
      fc.property(lengths, near, fc.option(near, { nil: undefined }), (limit, offset, span) => {
        const actual = { value: limit + offset, unit: 'mm' } as const;
        const max = span === undefined ? {} : { max: limit + Math.abs(span) };
        const expected = { min: limit, ...max, unit: 'mm', from: 'blank:a' } as const;
        const rounded = roundBeside(actual, expected);
        const below = (pair: typeof rounded) => pair.actual.value < pair.expected.min!;
        const above = (pair: typeof rounded) => pair.actual.value > (pair.expected.max ?? Infinity);
        expect(below(rounded)).toBe(below({ actual, expected }));
        expect(above(rounded)).toBe(above({ actual, expected }));
      }),
      { seed: 20_240_302, numRuns: 2000 },
    );
  });
});
