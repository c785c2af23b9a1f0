import type { EdgeStrip, EdgeStrips } from './edge-strips.ts';
import { ALIKE, medianColour, type ParallelStep, SHARE } from './parallel-step.ts';

/** A ring has begun where its colour is all but absent so far outside it (own choice: antialiasing takes less). */
const OUTSIDE_MM = 0.25;
/** It lasts so long inwards: between two fields of a pattern one row of pixels is of one colour too (own choice). */
const LASTS_MM = 0.17;
/** Share of the rays that may have the ring's colour outside it by chance. */
const BY_CHANCE = 1 - SHARE;

/**
 * The outermost ring of one colour at one distance from the edge all round, nearer than `belowMm`, whatever lies outside
 * it: on a texture, whose own steps are larger, a frame shows by being alike where nothing else is. null for none.
 */
export function findParallelRing({ strips, stepMm }: EdgeStrips, belowMm: number): ParallelStep | null {
  const reach = Math.max(2, Math.round(OUTSIDE_MM / stepMm));
  const last = Math.round(LASTS_MM / stepMm);
  for (let i = reach; i * stepMm < belowMm; i += 1) {
    const colour = medianColour(strips.map((strip) => strip.subarray(3 * i, 3 * i + 3)));
    const shareAlike = (depth: number) => countAlike(strips, depth, colour) / strips.length;
    const share = shareAlike(i);
    if (share < SHARE || shareAlike(i - reach) > BY_CHANCE) continue;
    if (shareAlike(i + last) >= SHARE) return { distanceMm: i * stepMm, share };
  }
  return null;
}

/** Of how many strips the sample at this depth has such a colour. */
function countAlike(
  strips: readonly EdgeStrip[],
  depth: number,
  [red, green, blue]: readonly number[],
): number {
  const at = 3 * depth;
  let count = 0;
  for (const strip of strips) {
    const far = Math.max(
      Math.abs(strip[at]! - red!),
      Math.abs(strip[at + 1]! - green!),
      Math.abs(strip[at + 2]! - blue!),
    );
    if (far <= ALIKE) count += 1;
  }
  return count;
}
