import { doubleAreaOf } from './polygon-distance.ts';
import type { Shape } from './shape.ts';
import { cornerRadiusOf } from './signed-distance.ts';

/** A point of the edge with the outward unit normal there. */
export interface EdgePoint {
  readonly x: number;
  readonly y: number;
  readonly normalX: number;
  readonly normalY: number;
  /** mm of edge that this point stands for; 0 for the normals of a fan, which share one corner. */
  readonly lengthMm: number;
  /** A fan at a corner that points outward has a meaning outside only, one that points inward inside only. */
  readonly faces: 'both' | 'outside' | 'inside';
}

/**
 * Points along the whole edge at most `stepMm` apart, clockwise as seen on the screen. At a sharp corner the
 * fan of normals between its two sides follows, so close that their ends, `reachMm` away, are at most
 * `stepMm` apart. Frame and unit are those of the shape.
 */
export function walkEdge(shape: Shape, stepMm: number, reachMm: number): EdgePoint[] {
  const { x, y, width, height } = shape.box;
  switch (shape.kind) {
    case 'rect':
      return walkPolygon(
        [
          [0, 0],
          [width, 0],
          [width, height],
          [0, height],
        ],
        x,
        y,
        stepMm,
        reachMm,
      );
    case 'rounded-rect':
      return walkRoundedBox(shape, cornerRadiusOf(shape), stepMm, reachMm);
    case 'stadium':
      return walkRoundedBox(shape, Math.min(width, height) / 2, stepMm, reachMm);
    case 'circle':
    case 'ellipse':
      return walkEllipse(shape, stepMm, reachMm);
    case 'polygon':
      return walkPolygon(shape.pointsMm, x, y, stepMm, reachMm);
  }
}

function walkSide(ax: number, ay: number, bx: number, by: number, stepMm: number): EdgePoint[] {
  const lengthMm = Math.hypot(bx - ax, by - ay);
  if (lengthMm === 0) return [];
  const count = Math.ceil(lengthMm / stepMm);
  const points: EdgePoint[] = [];
  for (let i = 0; i < count; i += 1) {
    const t = (i + 0.5) / count;
    points.push({
      x: ax + (bx - ax) * t,
      y: ay + (by - ay) * t,
      normalX: (by - ay) / lengthMm,
      normalY: (ax - bx) / lengthMm,
      lengthMm: lengthMm / count,
      faces: 'both',
    });
  }
  return points;
}

/** Normals at one point or along one arc, from angle `from` on, `sweep` radians clockwise on the screen. */
function walkArc(
  middleX: number,
  middleY: number,
  radius: number,
  from: number,
  sweep: number,
  stepMm: number,
  reachMm: number,
  faces: EdgePoint['faces'],
): EdgePoint[] {
  const count = Math.max(1, Math.ceil((Math.abs(sweep) * (radius + reachMm)) / stepMm));
  const points: EdgePoint[] = [];
  for (let i = 0; i < count; i += 1) {
    const angle = from + (sweep * (i + 0.5)) / count;
    const normalX = Math.cos(angle);
    const normalY = Math.sin(angle);
    points.push({
      x: middleX + radius * normalX,
      y: middleY + radius * normalY,
      normalX,
      normalY,
      lengthMm: (Math.abs(sweep) * radius) / count,
      faces,
    });
  }
  return points;
}

function walkRoundedBox(shape: Shape, radius: number, stepMm: number, reachMm: number): EdgePoint[] {
  const { x: left, y: top, width, height } = shape.box;
  if (radius === 0) return walkEdge({ kind: 'rect', box: shape.box }, stepMm, reachMm);
  const right = left + width;
  const bottom = top + height;
  const quarter = Math.PI / 2;
  const arc = (mx: number, my: number, from: number) =>
    walkArc(mx, my, radius, from, quarter, stepMm, reachMm, 'both');
  return [
    ...walkSide(left + radius, top, right - radius, top, stepMm),
    ...arc(right - radius, top + radius, -quarter),
    ...walkSide(right, top + radius, right, bottom - radius, stepMm),
    ...arc(right - radius, bottom - radius, 0),
    ...walkSide(right - radius, bottom, left + radius, bottom, stepMm),
    ...arc(left + radius, bottom - radius, quarter),
    ...walkSide(left, bottom - radius, left, top + radius, stepMm),
    ...arc(left + radius, top + radius, Math.PI),
  ];
}

function walkEllipse(shape: Shape, stepMm: number, reachMm: number): EdgePoint[] {
  const a = shape.box.width / 2;
  const b = shape.box.height / 2;
  // A step of the parameter moves the point, and the end of its normal, by at most the longer radius
  // (plus the reach, where the curvature is strongest: 1 + reach * a / b^2 of the step).
  const longest = Math.max(a, b);
  const sharpest = (Math.max(a, b) / Math.min(a, b) ** 2) * reachMm;
  const count = Math.ceil((2 * Math.PI * longest * (1 + sharpest)) / stepMm);
  const step = (2 * Math.PI) / count;
  return Array.from({ length: count }, (_, i) => {
    const angle = (i + 0.5) * step;
    const cos = Math.cos(angle);
    const sin = Math.sin(angle);
    const length = Math.hypot(cos / a, sin / b);
    return {
      x: shape.box.x + a + a * cos,
      y: shape.box.y + b + b * sin,
      normalX: cos / a / length,
      normalY: sin / b / length,
      lengthMm: Math.hypot(a * sin, b * cos) * step,
      faces: 'both',
    };
  });
}

function walkPolygon(
  points: readonly (readonly [number, number])[],
  offsetX: number,
  offsetY: number,
  stepMm: number,
  reachMm: number,
): EdgePoint[] {
  const clockwise = doubleAreaOf(points) > 0 ? points : [...points].reverse();
  const corners = clockwise.filter(([x, y], i) => {
    const [nextX, nextY] = clockwise[(i + 1) % clockwise.length]!;
    return x !== nextX || y !== nextY;
  });
  return corners.flatMap(([ax, ay], i) => {
    const [bx, by] = corners[(i + 1) % corners.length]!;
    const [cx, cy] = corners[(i + 2) % corners.length]!;
    const from = Math.atan2(ax - bx, by - ay);
    const to = Math.atan2(bx - cx, cy - by);
    const sweep = Math.atan2(Math.sin(to - from), Math.cos(to - from));
    const side = walkSide(ax + offsetX, ay + offsetY, bx + offsetX, by + offsetY, stepMm);
    if (sweep === 0) return side;
    const faces = sweep > 0 ? 'outside' : 'inside';
    return [...side, ...walkArc(bx + offsetX, by + offsetY, 0, from, sweep, stepMm, reachMm, faces)];
  });
}
