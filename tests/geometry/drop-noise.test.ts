import { expect, it } from 'vitest';
import { dropNoise } from '../../src/geometry/drop-noise.ts';

it('gives the number that the arithmetic meant, and keeps a millionth', () => {
  expect(0.1 + 0.2).not.toBe(0.3);
  expect(dropNoise(0.1 + 0.2)).toBe(0.3);
  expect(dropNoise(25 - 4e-7)).toBe(25);
  expect(dropNoise(25 - 1e-6)).toBe(24.999999);
  expect(dropNoise(-0.1 - 0.2)).toBe(-0.3);
  expect([Number.NaN, Infinity].map(dropNoise)).toEqual([Number.NaN, Infinity]);
});
