import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { decodeSrgb } from '../../src/colour/srgb.ts';
import { type Curve, evaluateCurve, powerCurve } from '../../src/icc/curve.ts';
import { invertCurve } from '../../src/icc/invert-curve.ts';

const table = (...values: number[]): Curve => ({ kind: 'table', values: Uint16Array.from(values) });
const parametric = (
  gamma: number,
  a: number,
  b: number,
  c: number,
  d: number,
  e: number,
  f: number,
): Curve => ({
  kind: 'parametric',
  gamma,
  a,
  b,
  c,
  d,
  e,
  f,
});
const unit = fc.double({ min: 0, max: 1, noNaN: true });
const srgb = parametric(2.4, 1 / 1.055, 0.055 / 1.055, 1 / 12.92, 0.04045, 0, 0);

describe('evaluateCurve', () => {
  // Worked by hand from the definitions of ICC.1:2022, 10.6 and 10.18.
  it.each([
    ['a gamma', powerCurve(2), 0.5, 0.25],
    ['between two entries', table(0, 65535), 0.25, 0.25],
    ['on an entry', table(0, 13107, 65535), 0.5, 0.2],
    ['between entries', table(0, 13107, 65535), 0.75, 0.6],
    ['at the end', table(65535, 0), 1, 0],
    ['above where the pieces meet', parametric(2, 1, 0, 0.5, 0.5, 0.1, 0.05), 0.5, 0.35],
    ['below where the pieces meet', parametric(2, 1, 0, 0.5, 0.5, 0.1, 0.05), 0.4, 0.25],
    ['a power of less than nothing', parametric(0.5, 1, -0.5, 0, 0, 0, 0), 0.25, 0],
    ['a result above 1', parametric(1, 2, 0, 0, 0, 0, 0), 0.75, 1],
    ['a result below 0', parametric(1, 1, 0, 0, 0, -0.5, 0), 0.25, 0],
    ['nothing to the power of less than nothing', parametric(-1, 1, 0, 0, 0, 0, 0), 0, 1],
    ['no number', powerCurve(2), Number.NaN, 0],
    ['beyond the end', powerCurve(2), 7, 1],
  ])('%s', (_, curve, x, y) => expect(evaluateCurve(curve, x)).toBeCloseTo(y, 12));

  it('of the parameters of sRGB is sRGB', () => {
    fc.assert(
      fc.property(unit, (x) => {
        expect(evaluateCurve(srgb, x)).toBeCloseTo(decodeSrgb(x), 12);
      }),
      { seed: 18 },
    );
  });
});

describe('invertCurve', () => {
  const risers: readonly (readonly [string, Curve])[] = [
    ['a gamma', powerCurve(1.8)],
    ['sRGB', srgb],
    ['a table', table(0, 100, 5000, 5001, 40000, 65535)],
    ['two entries', table(0, 65535)],
    ['one that starts above 0 and ends below 1', parametric(2, 0.8, 0.1, 0, 0, 0.05, 0)],
    ['one with a flat foot', table(0, 0, 0, 20000, 65535)],
    ['one that falls', table(65535, 30000, 0)],
    ['a formula that falls', parametric(2, -1, 1, 0, 0, 0, 0)],
    ['a formula with a step', parametric(2, 0.5, 0.5, 0.1, 0.5, 0, 0)],
  ];

  it.each(risers)('%s: finds an x that has the value', (_, curve) => {
    const invert = invertCurve(curve);
    // Formulas that fall go by a table of 4096 intervals.
    fc.assert(
      fc.property(unit, (x) => {
        const y = evaluateCurve(curve, x);
        expect(Math.abs(evaluateCurve(curve, invert(y)) - y)).toBeLessThan(1e-6);
      }),
      { seed: 6 },
    );
  });

  it.each(risers)('%s: gives an end for what lies beyond', (_, curve) => {
    const invert = invertCurve(curve);
    const ends = [evaluateCurve(curve, 0), evaluateCurve(curve, 1)];
    expect(evaluateCurve(curve, invert(-3))).toBe(Math.min(...ends));
    expect(evaluateCurve(curve, invert(4))).toBe(Math.max(...ends));
  });

  it('is not led astray by a dent in a measured table', () => {
    const dented = table(0, 20000, 19000, 21000, 65535);
    const places = [0, 0.1, 0.2, 0.29, 0.3, 0.31, 0.32, 0.5, 1].map(invertCurve(dented));
    expect(places).toEqual([...places].sort((one, other) => one - other));
  });

  it('gives 0 for black and 1 for white on a flat curve', () => {
    expect(invertCurve(table(0, 0, 0, 65535))(0)).toBe(0);
    expect(invertCurve(table(0, 65535, 65535))(1)).toBe(1);
    expect(invertCurve(table(500, 500))(0.5)).toBe(1);
  });
});
