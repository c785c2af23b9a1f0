import { distanceInsideEllipse } from './ellipse-distance.ts';
import { distanceInsidePolygon } from './polygon-distance.ts';
import type { Shape } from './shape.ts';

/**
 * Distance from a point to the outline of a shape, in mm: positive inside, negative outside, 0 on it.
 * True Euclidean distance, so `>= d` is the shape shrunk by d (sharp corners stay sharp) and `>= -d` the
 * shape grown by d (corners become round): the safe line and the bleed line.
 */
export function distanceInside(shape: Shape, xMm: number, yMm: number): number {
  const { box } = shape;
  const halfWidth = box.width / 2;
  const halfHeight = box.height / 2;
  const x = Math.abs(xMm - box.x - halfWidth);
  const y = Math.abs(yMm - box.y - halfHeight);
  switch (shape.kind) {
    case 'rect':
      return distanceInsideRoundedBox(x, y, halfWidth, halfHeight, 0);
    case 'rounded-rect':
      return distanceInsideRoundedBox(x, y, halfWidth, halfHeight, cornerRadiusOf(shape));
    case 'stadium':
      return distanceInsideRoundedBox(x, y, halfWidth, halfHeight, Math.min(halfWidth, halfHeight));
    case 'circle':
      return halfWidth - Math.hypot(x, y);
    case 'ellipse':
      return distanceInsideEllipse(x, y, halfWidth, halfHeight);
    case 'polygon':
      return distanceInsidePolygon(shape.pointsMm, xMm - box.x, yMm - box.y);
  }
}

/** Corner radius in mm, never more than half the shorter side. */
export function cornerRadiusOf(shape: Extract<Shape, { kind: 'rounded-rect' }>): number {
  return Math.min(shape.cornerRadiusMm, shape.box.width / 2, shape.box.height / 2);
}

/** x, y >= 0 from the middle: a box of the corner circles' middles, grown by the radius. */
function distanceInsideRoundedBox(
  x: number,
  y: number,
  halfWidth: number,
  halfHeight: number,
  radius: number,
): number {
  const overX = x - (halfWidth - radius);
  const overY = y - (halfHeight - radius);
  return radius - Math.hypot(Math.max(overX, 0), Math.max(overY, 0)) - Math.min(Math.max(overX, overY), 0);
}
