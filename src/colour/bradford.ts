import { applyMatrix, invertMatrix, type Matrix3, multiplyMatrices, scalingMatrix } from './matrix3.ts';
import type { Triple } from './triple.ts';

/** XYZ to the sharpened cone responses in which whites are scaled. @see ICC.1:2022, annex E (linear Bradford) */
const BRADFORD: Matrix3 = [
  [0.8951, 0.2664, -0.1614],
  [-0.7502, 1.7135, 0.0367],
  [0.0389, -0.0685, 1.0296],
];
const FROM_CONES = invertMatrix(BRADFORD)!;

/**
 * The matrix that turns XYZ seen under white `from` into the XYZ that looks alike under white `to` (linear
 * Bradford). Both whites as XYZ with Y = 1 and all cone responses above 0; `from` itself becomes `to`.
 * @see ICC.1:2022, annex E
 */
export function adaptWhite(from: Triple, to: Triple): Matrix3 {
  const source = applyMatrix(BRADFORD, from);
  const target = applyMatrix(BRADFORD, to);
  const scaling = scalingMatrix([target[0] / source[0], target[1] / source[1], target[2] / source[2]]);
  return multiplyMatrices(FROM_CONES, multiplyMatrices(scaling, BRADFORD));
}
