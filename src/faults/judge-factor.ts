import { LUMA_BLUE, LUMA_GREEN, LUMA_RED } from '../colour/luma.ts';
import { KERNELS } from './kernel-weights.ts';
import { fitSamples } from './sample-fit.ts';
import { prepareSampling, type Sampling } from './sampling.ts';

/** A factor with what its samples leave, and how many times more those of factors beside it leave: 0 where it explains nothing. */
export interface Candidate {
  readonly factor: number;
  /** Codes of 8 bits, root mean square; about 0.2 to 0.5 where only rounding is left, less in tones that are even. */
  readonly left: number;
  readonly dip: number;
}

/** Patches that choose a kernel (own choice). */
const KERNEL_PATCHES = 4;
/** All but this share of the patches must fit: the finest of the art decides, not the mean. */
const FITTING_SHARE = 0.7;
/** What may be left of a patch, codes: beyond, the samples explain nothing (own choice). */
const MOST_LEFT = 3;
/**
 * So far to either side a factor is compared with others: over a patch of 72 px, samples at an eighth are out of step by half
 * a sample there (72 / 8 x 0.06 = 0.54). Made pictures of tests/rates come out the same from 0.02 to 0.15; 0.01 misses four.
 */
const BESIDE = 0.06;
/** What rounding leaves of luma, codes: the weights of ITU-R BT.709-6 on three errors of 1 / sqrt 12. What is below it tells nothing. */
const ROUNDING = Math.hypot(LUMA_RED, LUMA_GREEN, LUMA_BLUE) / Math.sqrt(12);
/** Of `KERNELS`, the one that is straight between samples. */
const TRIANGLE = 0;
/** At the place of a sample it has a corner: a phase that is off by a 16th of it leaves a code and more of factors of 5 and 6. */
const FINE_PHASES = 32;

/** How well samples at every `factor` pixels explain the patches under the kernels of these places in `KERNELS`: all unless told. */
export function judgeFactor(
  patches: readonly Float64Array[],
  factor: number,
  kernels?: readonly number[],
  phases?: number,
): Candidate {
  const left = leftOf(patches, prepareSampling(factor, kernels, phases));
  if (left > MOST_LEFT) return { factor, left, dip: 0 };
  const below = leftOf(patches, prepareSampling(factor * (1 - BESIDE), kernels, phases));
  const above = leftOf(patches, prepareSampling(factor * (1 + BESIDE), kernels, phases));
  return { factor, left, dip: Math.min(below, above) / Math.max(left, ROUNDING) };
}

/** What `judgeFactor` says of straight lines between samples, by phases fine enough for their corners. */
export function judgeStraight(patches: readonly Float64Array[], factor: number): Candidate {
  return judgeFactor(patches, factor, [TRIANGLE], FINE_PHASES);
}

/** What `judgeFactor` would say, hardly ever less, by one kernel: the one that leaves least of some of the patches. */
export function glanceAtFactor(patches: readonly Float64Array[], factor: number): Candidate {
  const some = patches.slice(0, KERNEL_PATCHES);
  const lefts: number[] = [];
  for (const kernel of KERNELS.keys()) lefts.push(leftOf(some, prepareSampling(factor, [kernel])));
  return judgeFactor(patches, factor, [lefts.indexOf(Math.min(...lefts))]);
}

/** What samples leave of the patches, codes: of all but the worst of them. */
export function leftOf(patches: readonly Float64Array[], sampling: Sampling): number {
  const sorted = fitSamples(patches, sampling).sort();
  return sorted[Math.floor(FITTING_SHARE * (sorted.length - 1))]!;
}
