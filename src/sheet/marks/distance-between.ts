import type { RectMm } from '../../geometry/rectangle.ts';

/** From box to box by the shortest way; 0 where they touch or overlap. */
export function distanceBetween(one: RectMm, other: RectMm): number {
  const dx = Math.max(0, one.x - other.x - other.width, other.x - one.x - one.width);
  const dy = Math.max(0, one.y - other.y - other.height, other.y - one.y - one.height);
  return Math.hypot(dx, dy);
}
