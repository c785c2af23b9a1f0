import type { PointPx } from '../geometry/rectangle.ts';

/** Steps shorter than this are texture or edges (own choice, in pixels of the reduced copy). */
const SHORTEST_PX = 16;
/** Steps longer than this share of a side repeat too seldom to be told from chance (own choice). */
const LONGEST_SHARE = 0.42;
/** Likeness from which on a step counts (own choice, from made pictures). */
const LEAST = 0.12;
/** How much a peak stands out above what lies round it at this distance (own choice). */
const STANDS_OUT = 0.08;
const ROUND_PX = 5;
/** Peaks that are looked through. */
const MOST = 40;

/**
 * The two shortest independent steps after which a field is like itself, judged by its autocorrelation; null where it
 * does not repeat in two directions.
 */
export function findLattice(
  alike: (x: number, y: number) => number,
  width: number,
  height: number,
): readonly [PointPx, PointPx] | null {
  const [right, down] = [Math.floor(width * LONGEST_SHARE), Math.floor(height * LONGEST_SHARE)];
  const peaks: { readonly x: number; readonly y: number; readonly likeness: number }[] = [];
  for (let y = 0; y <= down; y++)
    for (let x = y === 0 ? 1 : -right; x <= right; x++) {
      if (Math.hypot(x, y) < SHORTEST_PX) continue;
      const likeness = alike(x, y);
      if (likeness < LEAST || !isPeak(alike, x, y, likeness)) continue;
      peaks.push({ x, y, likeness });
    }
  peaks.sort((a, b) => b.likeness - a.likeness);
  const strong = peaks.slice(0, MOST).filter(({ likeness }) => likeness > 0.6 * peaks[0]!.likeness);
  strong.sort((a, b) => Math.hypot(a.x, a.y) - Math.hypot(b.x, b.y));
  const first = strong[0];
  if (!first) return null;
  const second = strong.find(
    ({ x, y }) =>
      Math.abs(first.x * y - first.y * x) > 0.35 * Math.hypot(first.x, first.y) * Math.hypot(x, y),
  );
  if (!second) return null;
  // A true lattice repeats at the sum or the difference too.
  const sum = alike(first.x + second.x, first.y + second.y);
  const difference = alike(first.x - second.x, first.y - second.y);
  return Math.max(sum, difference) < 0.5 * second.likeness ? null : [first, second];
}

function isPeak(alike: (x: number, y: number) => number, x: number, y: number, likeness: number): boolean {
  for (let dy = -1; dy <= 1; dy++)
    for (let dx = -1; dx <= 1; dx++) if (alike(x + dx, y + dy) > likeness) return false;
  let round = 0;
  for (const [dx, dy] of AROUND) round += alike(x + dx * ROUND_PX, y + dy * ROUND_PX);
  return likeness - round / AROUND.length >= STANDS_OUT;
}

const AROUND = [
  [1, 0],
  [-1, 0],
  [0, 1],
  [0, -1],
  [1, 1],
  [1, -1],
  [-1, 1],
  [-1, -1],
] as const;
