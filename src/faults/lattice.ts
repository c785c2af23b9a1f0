import type { SelfLikeness } from './self-likeness.ts';

/** A shift in cells: right and down. */
export type Shift = readonly [number, number];

/** Two shifts after which a picture is like itself again, the shorter one last, neither a multiple of the other. */
export interface Lattice {
  readonly steps: readonly [Shift, Shift];
  /** How far the likeness over all points of the lattice lies above chance, in standard deviations. */
  readonly score: number;
}

/** Nearer ones are texture, weave or blocks (own choice, cells). */
const LEAST_STEP = 16;
/** Peaks that are tried in pairs (own choice). */
const PEAKS = 12;
/** Peaks nearer to each other than this are one (cells). */
const APART = 5;
/** A point of the lattice is sought so far around its place: steps need not be whole cells. */
const SLACK = 2;
/** Mean of the largest of 25 numbers of chance, in standard deviations (L. H. C. Tippett, Biometrika 17, 1925). */
const LARGEST_BY_CHANCE = 1.965;
/** Points of a lattice on each side of its middle: more do not lie within a picture of 512 cells. */
const REACH = 12;

/** A place where the picture is like itself again: i of the longer steps and j of the shorter from its middle. */
interface Point {
  readonly i: number;
  readonly j: number;
  readonly shift: Shift;
  readonly strength: number;
}

/** The lattice that a picture is most like itself on; null where no two steps lie within it three times over. */
export function findLattice(likeness: SelfLikeness): Lattice | null {
  const peaks = listPeaks(likeness);
  let best: Lattice | null = null;
  for (const [a, first] of peaks.entries())
    for (const second of peaks.slice(a + 1)) {
      const steps = shorten(first, second);
      const area = Math.abs(steps[0][0] * steps[1][1] - steps[0][1] * steps[1][0]);
      const short = Math.hypot(...steps[1]);
      if (short < LEAST_STEP || area < short * LEAST_STEP) continue;
      const points = listPoints(likeness, steps, REACH);
      const mean = points.reduce((sum, { strength }) => sum + strength, 0) / points.length;
      const score = (mean - LARGEST_BY_CHANCE) * Math.sqrt(points.length);
      if (points.length >= 3 && score > (best?.score ?? 0)) best = { steps, score };
    }
  return best === null ? null : { ...best, steps: refine(likeness, best.steps) };
}

function listPeaks(likeness: SelfLikeness): Shift[] {
  const { mostRight: right, mostDown: down, at } = likeness;
  const tops: { readonly shift: Shift; readonly value: number }[] = [];
  for (let y = 0; y <= down; y += 1)
    for (let x = y === 0 ? LEAST_STEP : -right; x <= right; x += 1)
      if (Math.hypot(x, y) >= LEAST_STEP && isTop(at, x, y)) tops.push({ shift: [x, y], value: at(x, y) });
  tops.sort((a, b) => b.value - a.value);
  const kept: Shift[] = [];
  for (const { shift } of tops) {
    if (kept.length === PEAKS) break;
    if (kept.every((other) => Math.hypot(shift[0] - other[0], shift[1] - other[1]) >= APART))
      kept.push(shift);
  }
  return kept;
}

function isTop(at: SelfLikeness['at'], x: number, y: number): boolean {
  const value = at(x, y);
  for (let dy = -1; dy <= 1; dy += 1)
    for (let dx = -1; dx <= 1; dx += 1) if (at(x + dx, y + dy) > value) return false;
  return true;
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

/** The strongest likeness about each point of the lattice within the picture, one of each opposite pair. */
function listPoints(
  { mostRight, mostDown, at, spread }: SelfLikeness,
  [long, short]: Lattice['steps'],
  reach: number,
): Point[] {
  const points: Point[] = [];
  for (let i = -reach; i <= reach; i += 1)
    for (let j = -reach; j <= reach; j += 1) {
      const x = Math.round(i * long[0] + j * short[0]);
      const y = Math.round(i * long[1] + j * short[1]);
      const isMirrored = y < 0 || (y === 0 && x <= 0);
      if (isMirrored || Math.abs(x) > mostRight || y > mostDown) continue;
      let point: Point | null = null;
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
function refine(likeness: SelfLikeness, from: Lattice['steps']): Lattice['steps'] {
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
