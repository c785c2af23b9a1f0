import { converter } from 'culori';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { labToXyzD50, XYZ_D50, xyzToLabD50 } from '../../src/colour/lab.ts';
import { applyMatrix, multiplyMatrices } from '../../src/colour/matrix3.ts';
import { decodeSrgb, encodeSrgb, SRGB_TO_XYZ_D50, XYZ_D50_TO_SRGB } from '../../src/colour/srgb.ts';
import type { Triple } from '../../src/colour/triple.ts';
import { readReferenceTable } from './reference-table.ts';

const toLab = (rgb: Triple): Triple =>
  xyzToLabD50(applyMatrix(SRGB_TO_XYZ_D50, [decodeSrgb(rgb[0]), decodeSrgb(rgb[1]), decodeSrgb(rgb[2])]));

const largestStep = (one: Triple, other: Triple) =>
  Math.max(...one.map((value, i) => Math.abs(value - other[i]!)));

describe('sRGB to Lab D50', () => {
  const rows = readReferenceTable('srgb-labd50.tsv');
  const samples = rows.map((row) => {
    const [red, green, blue] = row.triple('R', 'G', 'B');
    return { row, lab: toLab([red / 255, green / 255, blue / 255]) };
  });

  it('has 200 rows', () => expect(rows).toHaveLength(200));

  // Computed separately from the same standard, printed with six decimals.
  it('equals the separate computation in every row', () => {
    for (const { row, lab } of samples) expect(largestStep(lab, row.lab('calc_'))).toBeLessThan(0.000001);
  });

  // lcms prints four decimals, and its built-in sRGB has a matrix rounded to 16 bits behind the point.
  it('equals Little CMS in every row', () => {
    for (const { row, lab } of samples) expect(largestStep(lab, row.lab('lcms_'))).toBeLessThan(0.0001);
  });

  // culori adapts with a matrix rounded to seven digits, to a D50 of x 0.3457 y 0.3585 (XYZ 0.9643 1 0.8251).
  it('equals culori over the cube', () => {
    const convert = converter('lab');
    for (let red = 0; red <= 1; red += 0.125)
      for (let green = 0; green <= 1; green += 0.125)
        for (let blue = 0; blue <= 1; blue += 0.125) {
          const { l, a, b } = convert({ mode: 'rgb', r: red, g: green, b: blue });
          expect(largestStep(toLab([red, green, blue]), [l, a, b])).toBeLessThan(0.01);
        }
  });
});

describe('the sRGB curve', () => {
  // IEC 61966-2-1, 5.2: the two pieces meet at 0.04045, to the precision of its constants.
  it('has no step where its pieces meet', () => {
    const { below, above } = { below: decodeSrgb(0.04045), above: decodeSrgb(0.04045 + 1e-12) };
    expect(Math.abs(above - below)).toBeLessThan(1e-7);
  });

  it('goes there and back, and keeps the sign', () => {
    fc.assert(
      fc.property(fc.double({ min: -2, max: 2, noNaN: true }), (value) => {
        expect(Math.abs(encodeSrgb(decodeSrgb(value)) - value)).toBeLessThan(1e-8);
        expect(decodeSrgb(-value)).toBe(-decodeSrgb(value));
      }),
      { seed: 61966 },
    );
  });
});

describe('the matrix', () => {
  it('brings white to D50', () => {
    expect(largestStep(applyMatrix(SRGB_TO_XYZ_D50, [1, 1, 1]), XYZ_D50)).toBeLessThan(1e-12);
  });

  it('times its inverse is one', () => {
    const product = multiplyMatrices(SRGB_TO_XYZ_D50, XYZ_D50_TO_SRGB).flat();
    expect(Math.max(...product.map((value, i) => Math.abs(value - (i % 4 === 0 ? 1 : 0))))).toBeLessThan(
      1e-12,
    );
  });
});

describe('Lab', () => {
  it('goes to XYZ and back', () => {
    const anyLab = fc.tuple(
      ...[100, 150, 150].map((reach) => fc.double({ min: -reach, max: reach, noNaN: true })),
    );
    fc.assert(
      fc.property(anyLab, ([l = 0, a = 0, b = 0]) => {
        expect(largestStep(xyzToLabD50(labToXyzD50([l, a, b])), [l, a, b])).toBeLessThan(1e-9);
      }),
      { seed: 15 },
    );
  });
});
