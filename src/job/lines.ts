import { isConvexPolygon } from '../geometry/polygon-distance.ts';
import { growBox, type RectMm } from '../geometry/rectangle.ts';
import { distanceInside } from '../geometry/signed-distance.ts';
import type { BlankInHand } from './job.ts';

/** How far a point lies within the safe line, in mm: 0 on it, negative outside. On a whole wrap only rim and foot count. */
export function marginWithinSafe({ edge, safe, safeSides }: BlankInHand, xMm: number, yMm: number): number {
  const inside = distanceInside(edge, xMm, yMm);
  if (safeSides === 'all') return inside - safe.value;
  const { y, height } = edge.box;
  return Math.min(inside, Math.min(yMm - y, y + height - yMm) - safe.value);
}

/** How far a point lies within the bleed line, in mm: 0 on it, negative beyond. */
export function marginWithinBleed({ edge, bleed }: BlankInHand, xMm: number, yMm: number): number {
  return distanceInside(edge, xMm, yMm) + bleed.value;
}

/** The box of the bleed line, which is the canvas of the print-ready file. */
export function bleedBoxOf({ edge, bleed }: Pick<BlankInHand, 'edge' | 'bleed'>): RectMm {
  return growBox(edge.box, bleed.value);
}

/** A nanometre: far above what doubles lose on a blank of 10 m, far below what any printer places. */
export const TOUCH_MM = 1e-6;

/** True when the edge has no inward corner, so that the hull of the art decides whether it fits. */
export function hasConvexEdge({ edge }: BlankInHand): boolean {
  return edge.kind !== 'polygon' || isConvexPolygon(edge.pointsMm);
}
