import type { Triple } from './triple.ts';

/** White of the ICC profile connection space, Y = 1. @see ICC.1:2022, 7.2.16 */
export const XYZ_D50: Triple = [0.9642, 1, 0.8249];

/** (6/29)^3 and its companions. @see CIE 15:2018, 8.2.1 */
const LINEAR_BELOW = 216 / 24389;
const SLOPE = 24389 / 27;

/** Cube root of CIE Lab with its linear foot. `t` is a tristimulus value over that of the white; below 0 allowed. */
export function labRoot(t: number): number {
  return t > LINEAR_BELOW ? Math.cbrt(t) : (SLOPE * t + 16) / 116;
}

/** Inverse of `labRoot`. */
export function labCube(f: number): number {
  const cube = f * f * f;
  return cube > LINEAR_BELOW ? cube : (116 * f - 16) / SLOPE;
}

/** CIE L*a*b* of XYZ (Y = 1 is white), both with the D50 white. L* 0…100 for real colours, a* and b* unbounded. */
export function xyzToLabD50([x, y, z]: Triple): Triple {
  const fx = labRoot(x / XYZ_D50[0]);
  const fy = labRoot(y);
  const fz = labRoot(z / XYZ_D50[2]);
  return [116 * fy - 16, 500 * (fx - fy), 200 * (fy - fz)];
}

/** XYZ (Y = 1 is white) of CIE L*a*b*, both with the D50 white. */
export function labToXyzD50([l, a, b]: Triple): Triple {
  const fy = (l + 16) / 116;
  return [labCube(fy + a / 500) * XYZ_D50[0], labCube(fy), labCube(fy - b / 200) * XYZ_D50[2]];
}
