import { type EdgePoint, walkEdge } from './edge-walk.ts';
import { findBounds } from './rectangle.ts';
import type { Shape } from './shape.ts';
import { cornerRadiusOf, distanceInside } from './signed-distance.ts';

/** Points of a line that has no simple shape lie at most so far apart. */
const STEP_MM = 0.5;
/** Doubles lose far less than this on a blank of 10 m. */
const NEGLIGIBLE_MM = 1e-6;

/**
 * The line at `outwardMm` from the outline of a shape, as a shape: outside with round joins, inside (negative) with sharp
 * inward corners, as `distanceInside` has it. Exact for boxes and circles; of ellipses and polygons a polygon whose
 * corners lie on the line, at most 0.5 mm apart. null where nothing of the shape is so deep inside. An inner line that
 * falls into parts is joined through what lies between them.
 */
export function offsetShape(shape: Shape, outwardMm: number): Shape | null {
  if (outwardMm === 0) return shape;
  if (shape.kind === 'ellipse' || shape.kind === 'polygon') return followEdge(shape, outwardMm);
  const { x, y, width, height } = shape.box;
  const box = {
    x: x - outwardMm,
    y: y - outwardMm,
    width: width + 2 * outwardMm,
    height: height + 2 * outwardMm,
  };
  if (box.width <= 0 || box.height <= 0) return null;
  if (shape.kind === 'circle') return { kind: 'circle', box };
  const cornerRadiusMm = Math.max(0, radiusOf(shape) + outwardMm);
  return cornerRadiusMm > 0 ? { kind: 'rounded-rect', box, cornerRadiusMm } : { kind: 'rect', box };
}

function radiusOf(shape: Extract<Shape, { kind: 'rect' | 'rounded-rect' | 'stadium' }>): number {
  switch (shape.kind) {
    case 'rect':
      return 0;
    case 'stadium':
      return Math.min(shape.box.width, shape.box.height) / 2;
    case 'rounded-rect':
      return cornerRadiusOf(shape);
  }
}

function followEdge(shape: Shape, outwardMm: number): Shape | null {
  const missing = outwardMm > 0 ? 'inside' : 'outside';
  const points = walkEdge(shape, STEP_MM, Math.abs(outwardMm))
    .filter(({ faces }) => faces !== missing)
    .map((point) => moveOut(point, outwardMm))
    // Where normals cross, their ends lie nearer to another part of the edge: they are no part of the line.
    .filter(({ x, y }) => Math.abs(distanceInside(shape, x, y) + outwardMm) <= NEGLIGIBLE_MM);
  const box = findBounds(points);
  if (box === null || points.length < 3) return null;
  return { kind: 'polygon', box, pointsMm: points.map(({ x, y }) => [x - box.x, y - box.y] as const) };
}

function moveOut({ x, y, normalX, normalY }: EdgePoint, outwardMm: number) {
  return { x: x + normalX * outwardMm, y: y + normalY * outwardMm };
}
