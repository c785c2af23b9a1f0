import { adaptWhite } from './bradford.ts';
import { XYZ_D50 } from './lab.ts';
import { applyMatrix, invertMatrix, type Matrix3, multiplyMatrices } from './matrix3.ts';
import { XYZ_D65 } from './srgb.ts';
import type { Triple } from './triple.ts';

/** @see CSS Color Module Level 4, 9 and its sample code: XYZ D65 to cone responses, and their roots to Oklab */
const XYZ_TO_CONES: Matrix3 = [
  [0.819022437996703, 0.3619062600528904, -0.1288737815209879],
  [0.0329836539323885, 0.9292868615863434, 0.0361446663506424],
  [0.0481771893596242, 0.2642395317527308, 0.6335478284694309],
];
const ROOTS_TO_OKLAB: Matrix3 = [
  [0.210454268309314, 0.7936177747023054, -0.0040720430116193],
  [1.9779985324311684, -2.4285922420485799, 0.450593709617411],
  [0.0259040424655478, 0.7827717124575296, -0.8086757549230774],
];
const CONES: Matrix3 = multiplyMatrices(XYZ_TO_CONES, adaptWhite(XYZ_D50, XYZ_D65));
const CONES_BACK: Matrix3 = invertMatrix(CONES)!;
const OKLAB_BACK: Matrix3 = invertMatrix(ROOTS_TO_OKLAB)!;

/** Oklab of XYZ with the D50 white (Y = 1 is white): lightness 0…1, a and b to about 0.3 in sRGB. */
export function xyzD50ToOklab(xyzD50: Triple): Triple {
  const [l, m, s] = applyMatrix(CONES, xyzD50);
  return applyMatrix(ROOTS_TO_OKLAB, [Math.cbrt(l), Math.cbrt(m), Math.cbrt(s)]);
}

/** Inverse of `xyzD50ToOklab`. */
export function oklabToXyzD50(oklab: Triple): Triple {
  const [l, m, s] = applyMatrix(OKLAB_BACK, oklab);
  return applyMatrix(CONES_BACK, [l * l * l, m * m * m, s * s * s]);
}
