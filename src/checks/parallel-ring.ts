import type { EdgeStrips } from './edge-strips.ts';
import { ALIKE, distance, medianColour, type ParallelStep, SHARE } from './parallel-step.ts';

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
    const at = (depth: number) => strips.map((strip) => [...strip.subarray(3 * depth, 3 * depth + 3)]);
    const ring = at(i);
    const colour = medianColour(ring);
    const shareAlike = (colours: readonly (readonly number[])[]) =>
      colours.filter((own) => distance(own, colour) <= ALIKE).length / strips.length;
    const share = shareAlike(ring);
    if (share < SHARE || shareAlike(at(i - reach)) > BY_CHANCE) continue;
    if (shareAlike(at(i + last)) >= SHARE) return { distanceMm: i * stepMm, share };
  }
  return null;
}
