/** Pixels of a patch: a row or column of samples at an eighth has nine left of it. */
export const PATCH_PX = 72;
const PHASES = 8;
/** Keeps samples that hardly touch the patch from dividing by nothing; far below what rounding leaves. */
const DAMPING = 1e-8;

type Kernel = { readonly reach: number; readonly at: (x: number) => number };

/** Mitchell and Netravali, "Reconstruction filters in computer graphics", SIGGRAPH 1988. */
const cubic = (b: number, c: number): Kernel => ({
  reach: 2,
  at: (x) =>
    x < 1
      ? ((12 - 9 * b - 6 * c) * x ** 3 + (-18 + 12 * b + 6 * c) * x ** 2 + 6 - 2 * b) / 6
      : ((-b - 6 * c) * x ** 3 + (6 * b + 30 * c) * x ** 2 + (-12 * b - 48 * c) * x + 8 * b + 24 * c) / 6,
});
const sinc = (x: number) => (x === 0 ? 1 : Math.sin(Math.PI * x) / (Math.PI * x));
const KERNELS: readonly Kernel[] = [
  { reach: 1, at: (x) => 1 - x },
  cubic(0, 0.5),
  cubic(1 / 3, 1 / 3),
  { reach: 3, at: (x) => sinc(x) * sinc(x / 3) },
];

/** What samples at one distance and phase give under one kernel: weights, and the triangle of their normal equations. */
interface Fit {
  /** Of each pixel: its first sample, and the weights of that and the next. */
  readonly first: Int32Array;
  readonly weights: Float64Array;
  readonly samples: number;
  /** Pixels under one sample, at most: weights of a pixel, and band of the triangle. */
  readonly band: number;
  /** Lower triangle by Cholesky, row by row, the diagonal last. */
  readonly triangle: Float64Array;
}

/**
 * How far each patch is from anything that samples at every `factor` pixels give under one of the kernels in use
 * (triangle, Catmull-Rom, Mitchell, Lanczos of 3) at one of 8 phases: the least root mean square over what is free, in
 * the unit of the patches. Patches have `PATCH_PX` numbers, their mean 0. About 0.2 to 0.5 where codes of 8
 * bits were rounded and nothing else was done since. Linear least squares, for the first by its normal equations.
 */
export function fitSamples(patches: readonly Float32Array[], factor: number): Float64Array {
  const least = new Float64Array(patches.length).fill(Infinity);
  for (const kernel of KERNELS)
    for (let phase = 0; phase < PHASES; phase += 1) {
      const fit = prepareFit(kernel, factor, phase / PHASES);
      const free = Math.max(1, PATCH_PX - fit.samples);
      patches.forEach((patch, i) => {
        least[i] = Math.min(least[i]!, Math.sqrt(remainder(patch, fit) / free));
      });
    }
  return least;
}

function prepareFit({ reach, at }: Kernel, factor: number, phase: number): Fit {
  const band = 2 * reach;
  // Sample 0 is the first that reaches pixel 0.
  const start = Math.floor(phase) - reach + 1;
  const first = new Int32Array(PATCH_PX);
  const weights = new Float64Array(PATCH_PX * band);
  for (let i = 0; i < PATCH_PX; i += 1) {
    const place = i / factor + phase;
    first[i] = Math.floor(place) - reach + 1 - start;
    let sum = 0;
    for (let k = 0; k < band; k += 1) {
      const distance = Math.abs(place - (first[i]! + start + k));
      const weight = distance < reach ? at(distance) : 0;
      weights[i * band + k] = weight;
      sum += weight;
    }
    for (let k = 0; k < band; k += 1) weights[i * band + k]! /= sum;
  }
  const samples = first[PATCH_PX - 1]! + band;
  return { first, weights, samples, band, triangle: triangleOf(first, weights, samples, band) };
}

function triangleOf(first: Int32Array, weights: Float64Array, samples: number, band: number): Float64Array {
  const rows = new Float64Array(samples * band);
  const place = (row: number, column: number) => row * band + band - 1 - (row - column);
  for (let i = 0; i < PATCH_PX; i += 1)
    for (let a = 0; a < band; a += 1)
      for (let b = 0; b <= a; b += 1)
        rows[place(first[i]! + a, first[i]! + b)]! += weights[i * band + a]! * weights[i * band + b]!;
  for (let row = 0; row < samples; row += 1) {
    rows[place(row, row)]! += DAMPING;
    for (let column = Math.max(0, row - band + 1); column <= row; column += 1) {
      let sum = rows[place(row, column)]!;
      for (let k = Math.max(0, row - band + 1); k < column; k += 1)
        sum -= rows[place(row, k)]! * rows[place(column, k)]!;
      rows[place(row, column)] = column === row ? Math.sqrt(sum) : sum / rows[place(column, column)]!;
    }
  }
  return rows;
}

/** Squares of the patch less those of what the triangle turns its products with the samples into. */
function remainder(patch: Float32Array, { first, weights, samples, band, triangle }: Fit): number {
  const products = new Float64Array(samples);
  let left = 0;
  for (let i = 0; i < PATCH_PX; i += 1) {
    left += patch[i]! ** 2;
    for (let k = 0; k < band; k += 1) products[first[i]! + k]! += weights[i * band + k]! * patch[i]!;
  }
  for (let row = 0; row < samples; row += 1) {
    const end = row * band + band - 1;
    let sum = products[row]!;
    for (let k = 1; k < band && k <= row; k += 1) sum -= triangle[end - k]! * products[row - k]!;
    products[row] = sum / triangle[end]!;
    left -= products[row]! ** 2;
  }
  return Math.max(0, left);
}
