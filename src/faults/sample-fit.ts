import { type Fit, PATCH_PX, type Sampling } from './sampling.ts';

/**
 * How far each patch is from anything that samples at every `factor` pixels give under one of the kernels in use
 * (triangle, Catmull-Rom, Mitchell, Lanczos of 3) at one of 8 phases: the least root mean square over what is free, in
 * the unit of the patches. Patches have `PATCH_PX` numbers, their mean 0. About 0.2 to 0.5 where codes of 8
 * bits were rounded and nothing else was done since. Linear least squares, for the first by its normal equations.
 */
export function fitSamples(patches: readonly Float64Array[], { fits }: Sampling): Float64Array {
  const least = new Float64Array(patches.length);
  const products = new Float64Array(2 * PATCH_PX);
  for (let i = 0; i < patches.length; i += 1) {
    const patch = patches[i]!;
    let all = 0;
    for (let k = 0; k < PATCH_PX; k += 1) all += patch[k]! * patch[k]!;
    let best = all;
    for (let j = 0; j < fits.length; j += 1) {
      const fit = fits[j]!;
      const left = (all - explained(patch, fit, products)) / Math.max(1, PATCH_PX - fit.samples);
      if (left < best) best = left;
    }
    least[i] = Math.sqrt(Math.max(0, best));
  }
  return least;
}

/** Squares of what the triangle turns the products of the patch with the samples into: the part of its squares that they give. */
function explained(
  patch: Float64Array,
  { first, weights, samples, band, triangle }: Fit,
  products: Float64Array,
): number {
  products.fill(0, 0, samples);
  for (let i = 0, at = 0; i < PATCH_PX; i += 1) {
    const value = patch[i]!;
    for (let k = first[i]!, end = k + band; k < end; k += 1, at += 1) products[k]! += weights[at]! * value;
  }
  let squares = 0;
  for (let row = 0; row < samples; row += 1) {
    const end = (row + 1) * band - 1;
    let sum = products[row]!;
    for (let k = Math.min(row, band - 1); k > 0; k -= 1) sum -= triangle[end - k]! * products[row - k]!;
    sum *= triangle[end]!;
    products[row] = sum;
    squares += sum * sum;
  }
  return squares;
}
