import { areaOf, LARGEST_BY_CHANCE, type LatticeSteps, listPoints, refineSteps } from './lattice-points.ts';
import { LEAST_STEP, listPeaks, type Shift } from './likeness-peaks.ts';
import type { SelfLikeness } from './self-likeness.ts';

/** Two shifts after which a picture is like itself again. */
export interface Lattice {
  readonly steps: LatticeSteps;
  /** How far the likeness over all points of the lattice lies above chance, in standard deviations. */
  readonly score: number;
}

/** Points of a lattice on each side of its middle: more do not lie within a picture of 512 cells. */
const REACH = 12;

/** The lattice that a picture is most like itself on; null where no two steps lie within it three times over. */
export function findLattice(likeness: SelfLikeness): Lattice | null {
  const peaks = listPeaks(likeness);
  let best: Lattice | null = null;
  for (const [a, first] of peaks.entries())
    for (const second of peaks.slice(a + 1)) {
      const steps = shorten(first, second);
      const short = Math.hypot(...steps[1]);
      if (short < LEAST_STEP || areaOf(steps) < short * LEAST_STEP) continue;
      const points = listPoints(likeness, steps, REACH);
      const mean = points.reduce((sum, { strength }) => sum + strength, 0) / points.length;
      const score = (mean - LARGEST_BY_CHANCE) * Math.sqrt(points.length);
      if (points.length >= 3 && score > (best?.score ?? 0)) best = { steps, score };
    }
  return best === null ? null : { ...best, steps: refineSteps(likeness, best.steps) };
}

/** The two shortest shifts of the same lattice (reduction after Lagrange and Gauss). */
function shorten(first: Shift, second: Shift): [Shift, Shift] {
  let [long, short] = [first, second];
  for (;;) {
    if (Math.hypot(...long) < Math.hypot(...short)) [long, short] = [short, long];
    const times = Math.round((long[0] * short[0] + long[1] * short[1]) / (short[0] ** 2 + short[1] ** 2));
    if (times === 0) return [long, short];
    long = [long[0] - times * short[0], long[1] - times * short[1]];
    if (Math.hypot(...long) < 1) return [short, long];
  }
}
