import type { RectMm } from '../../geometry/rectangle.ts';

/** From box to box by the shortest way; 0 where they touch or overlap. */
export function distanceBetween(one: RectMm, other: RectMm): number {
  const dx = Math.max(0, one.x - other.x - other.width, other.x - one.x - one.width);
  const dy = Math.max(0, one.y - other.y - other.height, other.y - one.y - one.height);
  return dx === 0 ? dy : dy === 0 ? dx : Math.hypot(dx, dy);
}

/** To the nearest of these, at least one; `worth` is what a distance counts as, by default itself. Made for many places: no array. */
export function findNearest(
  boxes: readonly RectMm[],
  place: RectMm,
  worth: (box: RectMm, place: RectMm) => number = distanceBetween,
): number {
  let nearest = Infinity;
  for (const box of boxes) nearest = Math.min(nearest, worth(box, place));
  return nearest;
}
