import { describe, expect, it } from 'vitest';
import { adaptWhite } from '../../src/colour/bradford.ts';
import { applyMatrix, multiplyMatrices } from '../../src/colour/matrix3.ts';
import type { Triple } from '../../src/colour/triple.ts';

const D50: Triple = [0.9642, 1, 0.8249];
const D65: Triple = [0.95047, 1, 1.08883];

describe('adaptWhite', () => {
  // The D65 to D50 matrix as published by B. Lindbloom (cited from memory), printed with seven decimals for
  // whites 0.95047 1 1.08883 and 0.96422 1 0.82521.
  it('gives the published matrix', () => {
    const published = [
      [1.0478112, 0.0228866, -0.050127],
      [0.0295424, 0.9904844, -0.0170491],
      [-0.0092345, 0.0150436, 0.7521316],
    ];
    const matrix = adaptWhite(D65, [0.96422, 1, 0.82521]);
    for (const [i, row] of matrix.entries())
      for (const [j, value] of row.entries()) expect(value).toBeCloseTo(published[i]![j]!, 6);
  });

  it('brings one white to the other, and back undoes it', () => {
    for (const [i, value] of applyMatrix(adaptWhite(D65, D50), D65).entries())
      expect(value).toBeCloseTo(D50[i]!, 12);
    const both = multiplyMatrices(adaptWhite(D50, D65), adaptWhite(D65, D50)).flat();
    for (const [i, value] of both.entries()) expect(value).toBeCloseTo(i % 4 === 0 ? 1 : 0, 12);
  });
});
