import type { Shift } from './likeness-peaks.ts';
import type { SelfLikeness } from './self-likeness.ts';

/** Two shifts, the shorter one last, neither a multiple of the other. */
export type LatticeSteps = readonly [Shift, Shift];

/** Of one repeat, in cells. */
export function areaOf([long, short]: LatticeSteps): number {
  return Math.abs(long[0] * short[1] - long[1] * short[0]);
}

/** A point of the lattice is sought so far around its place: steps need not be whole cells. */
const SLACK = 2;
/** Mean of the largest of 25 numbers of chance, in standard deviations (L. H. C. Tippett, Biometrika 17, 1925). */
export const LARGEST_BY_CHANCE = 1.965;

/** A place where the picture is like itself again: i of the longer steps and j of the shorter from its middle. */
export interface LatticePoint {
  readonly i: number;
  readonly j: number;
  readonly shift: Shift;
  readonly strength: number;
}

/** The strongest likeness about each point of the lattice within the picture, one of each opposite pair. */
export function listPoints(
  { mostRight, mostDown, at, spread }: SelfLikeness,
  [long, short]: LatticeSteps,
  reach: number,
): LatticePoint[] {
  const points: LatticePoint[] = [];
  for (let i = -reach; i <= reach; i += 1)
    for (let j = -reach; j <= reach; j += 1) {
      const x = Math.round(i * long[0] + j * short[0]);
      const y = Math.round(i * long[1] + j * short[1]);
      const isMirrored = y < 0 || (y === 0 && x <= 0);
      if (isMirrored || Math.abs(x) > mostRight || y > mostDown) continue;
      let point: LatticePoint | null = null;
      for (let dy = -SLACK; dy <= SLACK; dy += 1)
        for (let dx = -SLACK; dx <= SLACK; dx += 1) {
          const strength = at(x + dx, y + dy) / spread;
          if (point === null || strength > point.strength)
            point = { i, j, shift: [x + dx, y + dy], strength };
        }
      points.push(point!);
    }
  return points;
}

/** The steps that lie best on the points that were found, by weighted least squares; near points first. */
export function refineSteps(likeness: SelfLikeness, from: LatticeSteps): LatticeSteps {
  let steps = from;
  for (const reach of [2, 4, 6]) {
    let [ii, ij, jj] = [0, 0, 0];
    const right = [0, 0];
    const down = [0, 0];
    for (const { i, j, shift, strength } of listPoints(likeness, steps, reach)) {
      const weight = Math.max(0, strength - LARGEST_BY_CHANCE);
      ii += weight * i * i;
      ij += weight * i * j;
      jj += weight * j * j;
      for (const [axis, moments] of [right, down].entries()) {
        moments[0]! += weight * i * shift[axis]!;
        moments[1]! += weight * j * shift[axis]!;
      }
    }
    const determinant = ii * jj - ij * ij;
    if (determinant < 1e-9) return steps;
    const solve = (moments: readonly number[]) => [
      (jj * moments[0]! - ij * moments[1]!) / determinant,
      (ii * moments[1]! - ij * moments[0]!) / determinant,
    ];
    const [x, y] = [solve(right), solve(down)];
    steps = [
      [x[0]!, y[0]!],
      [x[1]!, y[1]!],
    ];
  }
  return steps;
}
