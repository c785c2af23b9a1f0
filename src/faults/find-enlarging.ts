import type { LumaLines } from '../raster/luma-lines.ts';
import { findDetailPatches } from './detail-patches.ts';
import { findEnlargingPeriods, MOST_FACTOR } from './enlarging-period.ts';
import { type Candidate, glanceAtFactor, judgeFactor, judgeStraight, leftOf } from './judge-factor.ts';
import { findRepeatedPixels, hasManyTones } from './repeated-pixels.ts';
import { prepareSampling } from './sampling.ts';
import { hasSharpSteps } from './sharp-steps.ts';

/** By how much lines were enlarged, and how that is known. */
export interface Enlarging {
  /** Pixels for each that carries detail of its own; 1 where each does. */
  readonly factor: number;
  readonly by: 'repeated-pixels' | 'interpolation' | 'nothing';
  /** Whether it is so plain that it may be believed though the other direction says nothing of it, or something else. */
  readonly isPlain: boolean;
}

/** Patches of a first look, those of a verdict, and what there must be (own choice). */
const FIRST_PATCHES = 10;
const MOST_PATCHES = 32;
const LEAST_PATCHES = 6;
/** A factor beside the right one leaves this many times more, or the right one is not told from others (own choice, by the tables). */
const LEAST_DIP = 1.3;
/** One direction alone is believed from this on, codes the last: few patches, and steps of flat art, fit by chance (own choice, by the tables). */
const PLAIN_PATCHES = 12;
const PLAIN_DIP = 1.6;
const PLAIN_LEFT = 1.5;
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
  if (repeated !== null)
    return hasManyTones(lines) ? { factor: repeated, by: 'repeated-pixels', isPlain: true } : null;
  const patches = findDetailPatches(lines, MOST_PATCHES);
  const isSharp = hasSharpSteps(lines);
  // What compression adds looks like detail of single pixels too, sharp steps do not come of it.
  const fine: Enlarging = { factor: 1, by: 'nothing', isPlain: isSharp };
  if (patches.length < LEAST_PATCHES) return isSharp ? fine : null;
  const few = patches.filter((_, i) => i % Math.ceil(patches.length / FIRST_PATCHES) === 0);
  const right = [WITHOUT_PERIOD, ...findEnlargingPeriods(lines)]
    .map((factor) => glanceAtFactor(few, factor))
    .filter(({ dip }) => dip > LIKELY_DIP)
    .sort((a, b) => b.dip - a.dip)
    .slice(0, MOST_LIKELY)
    .map(({ factor }) => judgeFactor(patches, factor))
    .filter(({ dip }) => dip > LEAST_DIP);
  const [first] = right.sort((a, b) => b.dip - a.dip);
  if (first !== undefined) {
    const factor = multipleOf(first, patches);
    const isPlain = patches.length >= PLAIN_PATCHES && first.dip > PLAIN_DIP && first.left < PLAIN_LEFT;
    return factor >= SPREADS && isSharp ? fine : { factor, by: 'interpolation', isPlain };
  }
  return isSharp || leftOf(patches, prepareSampling(SINGLE)) > LEAST_OF_SINGLE ? fine : null;
}

/** Whether samples at every `factor` pixels explain the lines as well as they do where that is known from elsewhere. */
export function isEnlargedBy(lines: LumaLines, factor: number): boolean {
  const patches = findDetailPatches(lines, MOST_PATCHES);
  if (patches.length < LEAST_PATCHES || (factor >= SPREADS && hasSharpSteps(lines))) return false;
  return [judgeFactor(patches, factor), judgeStraight(patches, factor)].some(
    ({ left, dip }) => left < LEAST_OF_SINGLE && dip > ALIKE_DIP,
  );
}

function multipleOf({ factor, left }: Candidate, patches: readonly Float64Array[]): number {
  const multiple = MULTIPLES.map((times) => times * factor).find((larger) => {
    if (larger > MOST_FACTOR) return false;
    const candidate = judgeStraight(patches, larger);
    return candidate.left < ALIKE * left && candidate.dip > ALIKE_DIP;
  });
  return multiple ?? factor;
}
