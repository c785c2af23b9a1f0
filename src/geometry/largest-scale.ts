import type { PointMm } from './rectangle.ts';

/** How far a point lies inside a region, in mm: negative outside. */
export type Margin = (xMm: number, yMm: number) => number;

/**
 * The largest factor by which `points` (relative to the middle) can be scaled about `middle` so that every
 * one of them has a margin of at least 0. 0 when the middle itself is outside, Infinity when no point limits it.
 *
 * In a convex region a point that is outside stays outside when it moves on, so each point has one limit,
 * found by bisection to the last bit. In any other region scales are tried from above in steps that move no
 * point by more than `stepMm`, and the first that fits is refined. `reachMm`: how far the region extends from
 * the middle at most.
 */
export function findLargestScale(
  points: readonly PointMm[],
  middle: PointMm,
  margin: Margin,
  region: { readonly convex: boolean; readonly reachMm: number; readonly stepMm: number },
): number {
  if (margin(middle.x, middle.y) < 0) return 0;
  const radius = points.reduce((most, { x, y }) => Math.max(most, Math.hypot(x, y)), 0);
  if (radius === 0) return Infinity;
  const fits = (point: PointMm, scale: number) =>
    margin(middle.x + point.x * scale, middle.y + point.y * scale) >= 0;
  // Beyond this the farthest point has left the region, whatever its shape.
  const upper = region.reachMm / radius;
  return region.convex
    ? shrinkPointByPoint(points, upper, fits)
    : searchFromAbove(points, upper, region.stepMm / radius, fits);
}

type Fits = (point: PointMm, scale: number) => boolean;

function shrinkPointByPoint(points: readonly PointMm[], upper: number, fits: Fits): number {
  let scale = upper;
  for (const point of points) {
    if (!fits(point, scale)) scale = bisect(0, scale, (candidate) => fits(point, candidate));
  }
  return scale;
}

function searchFromAbove(points: readonly PointMm[], upper: number, step: number, fits: Fits): number {
  let lastOffender = points[0]!;
  const allFit = (scale: number): boolean => {
    if (!fits(lastOffender, scale)) return false;
    const offender = points.find((point) => !fits(point, scale));
    if (offender) lastOffender = offender;
    return offender === undefined;
  };
  for (let scale = upper; scale > 0; scale -= step) {
    if (allFit(scale)) return bisect(scale, Math.min(upper, scale + step), allFit);
  }
  return bisect(0, Math.min(upper, step), allFit);
}

/** The largest double in low…high for which `holds`, when it holds at `low` and stops holding once. */
function bisect(low: number, high: number, holds: (value: number) => boolean): number {
  if (holds(high)) return high;
  let good = low;
  let bad = high;
  for (;;) {
    const middle = (good + bad) / 2;
    if (middle <= good || middle >= bad) return good;
    if (holds(middle)) good = middle;
    else bad = middle;
  }
}
