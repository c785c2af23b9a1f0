import { expect, it } from 'vitest';
import { LUMA_BLUE, LUMA_GREEN, LUMA_RED } from '../../src/colour/luma.ts';
import { applyMatrix, invertMatrix, transpose } from '../../src/colour/matrix3.ts';
import { XYZ_D65 } from '../../src/colour/srgb.ts';
import type { Triple } from '../../src/colour/triple.ts';

const WEIGHTS = [LUMA_RED, LUMA_GREEN, LUMA_BLUE];

it('the weights of luma are, to four digits, how much of each primary of BT.709 makes its white', () => {
  const withY1 = (x: number, y: number): Triple => [x / y, 1, (1 - x - y) / y];
  // ITU-R BT.709-6, 1.3: chromaticities of the primaries.
  const primaries = transpose([withY1(0.64, 0.33), withY1(0.3, 0.6), withY1(0.15, 0.06)]);
  applyMatrix(invertMatrix(primaries)!, XYZ_D65).forEach((share, i) => {
    expect(Math.abs(share - WEIGHTS[i]!)).toBeLessThanOrEqual(0.5e-4);
  });
});

it('white has the luma of its samples, also in whole numbers', () => {
  expect(LUMA_RED + LUMA_GREEN + LUMA_BLUE).toBeCloseTo(1, 12);
  expect(WEIGHTS.reduce((sum, weight) => sum + Math.round(weight * 65536), 0)).toBe(65536);
});
