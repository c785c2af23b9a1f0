import type { Triple } from './triple.ts';

/** A 3x3 matrix as its three rows; it is applied to columns. */
export type Matrix3 = readonly [Triple, Triple, Triple];

/** matrix · column. */
export function applyMatrix(matrix: Matrix3, [x, y, z]: Triple): Triple {
  const row = ([a, b, c]: Triple) => a * x + b * y + c * z;
  return [row(matrix[0]), row(matrix[1]), row(matrix[2])];
}

/** left · right: applying the product is applying `right` first. */
export function multiplyMatrices(left: Matrix3, right: Matrix3): Matrix3 {
  const columns = transpose(right);
  const row = (r: Triple): Triple => [dot(r, columns[0]), dot(r, columns[1]), dot(r, columns[2])];
  return [row(left[0]), row(left[1]), row(left[2])];
}

/** Product of the volumes of the rows: 0 when the columns do not span the space. */
export function determinantOf([a, b, c]: Matrix3): number {
  return dot(a, cross(b, c));
}

/** The inverse, or null when the determinant is 0 or not finite. */
export function invertMatrix(matrix: Matrix3): Matrix3 | null {
  const [a, b, c] = matrix;
  const determinant = determinantOf(matrix);
  if (determinant === 0 || !Number.isFinite(1 / determinant)) return null;
  const scaled = ([x, y, z]: Triple): Triple => [x / determinant, y / determinant, z / determinant];
  return transpose([scaled(cross(b, c)), scaled(cross(c, a)), scaled(cross(a, b))]);
}

/** The diagonal matrix that scales each axis. */
export function scalingMatrix([x, y, z]: Triple): Matrix3 {
  return [
    [x, 0, 0],
    [0, y, 0],
    [0, 0, z],
  ];
}

/** Rows become columns. */
export function transpose([a, b, c]: Matrix3): Matrix3 {
  return [
    [a[0], b[0], c[0]],
    [a[1], b[1], c[1]],
    [a[2], b[2], c[2]],
  ];
}

function dot(a: Triple, b: Triple): number {
  return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
}

function cross(a: Triple, b: Triple): Triple {
  return [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
}
