import { KERNELS, STEPS, WEIGHTS, type Weights } from './kernel-weights.ts';

/** Pixels of a patch: a row or column of samples at an eighth has nine left of it. */
export const PATCH_PX = 72;
const PHASES = 8;
/** Keeps samples that hardly touch the patch from dividing by nothing; far below what rounding leaves. */
const DAMPING = 1e-8;

/** What samples at one distance and phase give under one kernel: weights, and the triangle of their normal equations. */
export interface Fit {
  /** Of each pixel: its first sample, and the weights of that and the next. */
  readonly first: Int32Array;
  readonly weights: Float64Array;
  readonly samples: number;
  /** Pixels under one sample, at most: weights of a pixel, and band of the triangle. */
  readonly band: number;
  /** Lower triangle by Cholesky, row by row, the diagonal last and inverted. */
  readonly triangle: Float64Array;
}

/** Samples at every `factor` pixels, under each kernel at each phase: what does not depend on any patch. */
export interface Sampling {
  readonly factor: number;
  readonly fits: readonly Fit[];
}

/** Samples at every `factor` pixels, more than 1, at 8 phases, under the kernels of these places in `KERNELS`: all unless told. */
export function prepareSampling(
  factor: number,
  kernels: readonly number[] = [...KERNELS.keys()],
  phases = PHASES,
): Sampling {
  const fits: Fit[] = [];
  for (const kernel of kernels)
    for (let phase = 0; phase < phases; phase += 1)
      fits.push(prepareFit(WEIGHTS[kernel]!, factor, phase / phases));
  return { factor, fits };
}

function prepareFit({ band, table }: Weights, factor: number, phase: number): Fit {
  const first = new Int32Array(PATCH_PX);
  const weights = new Float64Array(PATCH_PX * band);
  for (let i = 0; i < PATCH_PX; i += 1) {
    const place = i / factor + phase;
    const sample = Math.floor(place);
    const step = (place - sample) * STEPS;
    const at = Math.floor(step);
    const part = step - at;
    first[i] = sample;
    for (let k = 0, from = at * band; k < band; k += 1, from += 1)
      weights[i * band + k] = table[from]! + part * (table[from + band]! - table[from]!);
  }
  const samples = first[PATCH_PX - 1]! + band;
  return { first, weights, samples, band, triangle: triangleOf(first, weights, samples, band) };
}

function triangleOf(first: Int32Array, weights: Float64Array, samples: number, band: number): Float64Array {
  const rows = new Float64Array(samples * band);
  // A row holds the columns up to its own, which comes last.
  for (let i = 0; i < PATCH_PX; i += 1)
    for (let a = 0; a < band; a += 1) {
      const weight = weights[i * band + a]!;
      const end = (first[i]! + a + 1) * band - 1 - a;
      for (let b = 0; b <= a; b += 1) rows[end + b]! += weight * weights[i * band + b]!;
    }
  for (let row = 0; row < samples; row += 1) {
    const end = (row + 1) * band - 1;
    rows[end]! += DAMPING;
    const from = Math.max(0, row - band + 1);
    for (let column = from; column <= row; column += 1) {
      const [at, other] = [end - row, (column + 1) * band - 1 - column];
      let sum = rows[at + column]!;
      for (let k = from; k < column; k += 1) sum -= rows[at + k]! * rows[other + k]!;
      rows[at + column] = column === row ? 1 / Math.sqrt(sum) : sum * rows[other + column]!;
    }
  }
  return rows;
}
