import type { LumaLines } from '../raster/luma-lines.ts';
import { findDetailPatches } from './detail-patches.ts';
import { findEnlargingPeriods, MOST_FACTOR } from './enlarging-period.ts';
import { KERNELS } from './kernel-weights.ts';
import { findRepeatedPixels, hasManyTones } from './repeated-pixels.ts';
import { fitSamples } from './sample-fit.ts';
import { prepareSampling, type Sampling } from './sampling.ts';
import { hasSharpSteps } from './sharp-steps.ts';

/** By how much lines were enlarged, and how that is known. */
export interface Enlarging {
  /** Pixels for each that carries detail of its own; 1 where each does. */
  readonly factor: number;
  readonly by: 'repeated-pixels' | 'interpolation' | 'nothing';
}

/** Patches that choose a kernel, those of a first look, those of a verdict, and what there must be (own choice). */
const KERNEL_PATCHES = 4;
const FIRST_PATCHES = 10;
const MOST_PATCHES = 32;
const LEAST_PATCHES = 6;
/** All but this share of the patches must fit: the finest of the art decides, not the mean. */
const FITTING_SHARE = 0.7;
/** What may be left of a patch, codes: beyond, the samples explain nothing (own choice). */
const MOST_LEFT = 3;
/** A factor beside the right one leaves this many times more, or the right one is not told from others (own choice, by the tables). */
const LEAST_DIP = 1.3;
const BESIDE = 0.06;
/** What a first look must show of that to go on, and how many go on at most: each verdict costs more than ten looks (own choice, by the tables). */
const LIKELY_DIP = 1.1;
const MOST_LIKELY = 3;
/**
 * Straight lines between samples are straight between finer ones too: a multiple that leaves hardly more is the right one,
 * though what lies beside it is told from it less (own choice, by the tables).
 */
const MULTIPLES = [3, 2];
const ALIKE = 2.5;
const ALIKE_DIP = 1.1;
/** Enlarging centred by 2 gives both its pixels the same mirrored weights: no period shows, so it is always tried. */
const WITHOUT_PERIOD = 2;
/** From this on a step has two pixels between its sides at least: a sharper one is of art that was laid on later, and counts. */
const SPREADS = 3;
/** Of samples 1.25 px apart this much must be left for every pixel to count, codes: three times what rounding leaves. */
const LEAST_OF_SINGLE = 1;
const SINGLE = 1.25;

/**
 * By how much a picture was enlarged along the lines; null where nothing tells: too little or too soft detail. Of the
 * factors that repeated pixels or a period suggest, the one whose samples explain the patches, while those of factors
 * a little larger and smaller do not: so the detail of soft art, which any coarse samples explain, is taken for none.
 */
export function findEnlarging(lines: LumaLines): Enlarging | null {
  const repeated = findRepeatedPixels(lines);
  if (repeated !== null) return hasManyTones(lines) ? { factor: repeated, by: 'repeated-pixels' } : null;
  const patches = findDetailPatches(lines, MOST_PATCHES);
  const fine: Enlarging = { factor: 1, by: 'nothing' };
  if (patches.length < LEAST_PATCHES) return hasSharpSteps(lines) ? fine : null;
  const few = patches.filter((_, i) => i % Math.ceil(patches.length / FIRST_PATCHES) === 0);
  const right = [WITHOUT_PERIOD, ...findEnlargingPeriods(lines)]
    .map((factor) => glance(few, factor))
    .filter(({ dip }) => dip > LIKELY_DIP)
    .sort((a, b) => b.dip - a.dip)
    .slice(0, MOST_LIKELY)
    .map(({ factor }) => judgeFactor(patches, factor))
    .filter(({ dip }) => dip > LEAST_DIP);
  const [first] = right.sort((a, b) => b.dip - a.dip);
  if (first !== undefined) {
    const factor = multipleOf(first, patches);
    return factor >= SPREADS && hasSharpSteps(lines) ? fine : { factor, by: 'interpolation' };
  }
  return leftOf(patches, prepareSampling(SINGLE)) > LEAST_OF_SINGLE || hasSharpSteps(lines) ? fine : null;
}

/** A factor with what its samples leave, and how many times more those of factors beside it leave: 0 where it explains nothing. */
interface Candidate {
  readonly factor: number;
  readonly left: number;
  readonly dip: number;
}

function multipleOf({ factor, left }: Candidate, patches: readonly Float64Array[]): number {
  const multiple = MULTIPLES.map((times) => times * factor).find((larger) => {
    if (larger > MOST_FACTOR) return false;
    const candidate = judgeFactor(patches, larger);
    return candidate.left < ALIKE * left && candidate.dip > ALIKE_DIP;
  });
  return multiple ?? factor;
}

/** What `judgeFactor` would say, hardly ever less, by one kernel: the one that leaves least of some of the patches. */
function glance(patches: readonly Float64Array[], factor: number): Candidate {
  const some = patches.slice(0, KERNEL_PATCHES);
  const lefts = Array.from({ length: KERNELS.length }, (_, kernel) =>
    leftOf(some, prepareSampling(factor, [kernel])),
  );
  return judgeFactor(patches, factor, [lefts.indexOf(Math.min(...lefts))]);
}

function judgeFactor(
  patches: readonly Float64Array[],
  factor: number,
  kernels?: readonly number[],
): Candidate {
  const left = leftOf(patches, prepareSampling(factor, kernels));
  if (left > MOST_LEFT) return { factor, left, dip: 0 };
  const beside = [1 - BESIDE, 1 + BESIDE].map((share) =>
    leftOf(patches, prepareSampling(factor * share, kernels)),
  );
  return { factor, left, dip: Math.min(...beside) / Math.max(left, Number.EPSILON) };
}

function leftOf(patches: readonly Float64Array[], sampling: Sampling): number {
  const sorted = fitSamples(patches, sampling).sort();
  return sorted[Math.floor(FITTING_SHARE * (sorted.length - 1))]!;
}
