import type { PointPx } from './rectangle.ts';

/**
 * Convex hull, clockwise as seen on the screen (y down), without points on its straight sides; empty for no points.
 * @see A. M. Andrew, "Another efficient algorithm for convex hulls in two dimensions", Inf. Proc. Letters 9 (1979).
 */
export function findConvexHull(points: readonly PointPx[]): PointPx[] {
  const sorted = [...points].sort(byPlace);
  if (sorted.length < 3) return sorted;
  return [...chain(sorted), ...chain(sorted.reverse())];
}

function byPlace(p: PointPx, q: PointPx): number {
  return p.x - q.x || p.y - q.y;
}

/** One half of the hull, without its last point, which the other half begins with. */
function chain(ordered: readonly PointPx[]): PointPx[] {
  const hull: PointPx[] = [];
  for (const point of ordered) {
    while (hull.length >= 2 && turnsLeftOrStraight(hull[hull.length - 2]!, hull[hull.length - 1]!, point))
      hull.pop();
    hull.push(point);
  }
  hull.pop();
  return hull;
}

function turnsLeftOrStraight(a: PointPx, b: PointPx, c: PointPx): boolean {
  return (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x) <= 0;
}
