import { describe, expect, it } from 'vitest';
import { makePeriodogram, strengthAt } from '../../src/faults/periodogram.ts';
import { seededNumbers } from '../pictures.ts';

describe('periodogram', () => {
  it('agrees with the sum that defines the transform', () => {
    const next = seededNumbers(3);
    const values = Float64Array.from({ length: 50 }, next);
    const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
    const { strength, size } = makePeriodogram(values);
    expect(size).toBe(128);
    const magnitudes = Array.from({ length: size / 2 + 1 }, (_, k) => {
      let [re, im] = [0, 0];
      values.forEach((value, i) => {
        const windowed = (value - mean) * Math.sin((Math.PI * (i + 0.5)) / values.length) ** 2;
        re += windowed * Math.cos((2 * Math.PI * k * i) / size);
        im += windowed * Math.sin((2 * Math.PI * k * i) / size);
      });
      return Math.hypot(re, im);
    });
    // All but the last frequency share one ground: the median of the whole.
    const ground = [...magnitudes].sort((a, b) => a - b)[32]!;
    for (const k of [0, 1, 7, 30, 63]) expect(strength[k]).toBeCloseTo(magnitudes[k]! / ground, 9);
  });

  it.each([4, 7.3, 11, 26.4, 60])('a period of %d stands out, and next to nothing else', (period) => {
    const next = seededNumbers(8);
    const values = Float64Array.from(
      { length: 900 },
      (_, i) => Math.cos((2 * Math.PI * i) / period) + 2 * (next() - 0.5),
    );
    const periodogram = makePeriodogram(values);
    expect(strengthAt(periodogram, 1 / period)).toBeGreaterThan(12);
    expect(strengthAt(periodogram, 1.2 / period)).toBeLessThan(5);
  });

  it('of nothing, of one number and of equal ones is 0 everywhere', () => {
    for (const values of [[], [3], [2, 2, 2, 2, 2]])
      expect(Math.max(...makePeriodogram(Float64Array.from(values)).strength)).toBe(0);
    expect(strengthAt(makePeriodogram(new Float64Array(8)), 0.7)).toBe(0);
  });
});
