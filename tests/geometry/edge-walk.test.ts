import { describe, expect, it } from 'vitest';
import { walkEdge } from '../../src/geometry/edge-walk.ts';
import type { Shape } from '../../src/geometry/shape.ts';
import { distanceInside } from '../../src/geometry/signed-distance.ts';

const box = { x: 5, y: 7, width: 80, height: 60 };
const lShape = [
  [0, 0],
  [80, 0],
  [80, 30],
  [30, 30],
  [30, 60],
  [0, 60],
] as const;
const cases: [Shape, number][] = [
  [{ kind: 'rect', box }, 280],
  [{ kind: 'rounded-rect', box, cornerRadiusMm: 10 }, 200 + 20 * Math.PI],
  [{ kind: 'circle', box: { ...box, width: 60 } }, 60 * Math.PI],
  // Ramanujan's second approximation for half axes 40 and 30, good to 1e-9 here.
  [{ kind: 'ellipse', box }, Math.PI * 70 * (1 + 3 / 49 / (10 + Math.sqrt(4 - 3 / 49)))],
  [{ kind: 'stadium', box }, 40 + 60 * Math.PI],
  [{ kind: 'polygon', box, pointsMm: lShape }, 280],
  [{ kind: 'polygon', box, pointsMm: [...lShape].reverse() }, 280],
];

describe('walkEdge', () => {
  it.each(cases)('stands for the whole way round: %j', (shape, perimeter) => {
    const total = walkEdge(shape, 0.25, 3).reduce((sum, point) => sum + point.lengthMm, 0);
    expect(Math.abs(total - perimeter)).toBeLessThan(1e-3);
  });

  it.each(cases)('lies on the edge, its normals lead out: %j', (shape) => {
    for (const { x, y, normalX, normalY, faces } of walkEdge(shape, 0.25, 3)) {
      expect(Math.abs(distanceInside(shape, x, y))).toBeLessThan(1e-9);
      expect(Math.hypot(normalX, normalY)).toBeCloseTo(1, 12);
      // Along an outward normal the nearest point of a convex edge stays the one the normal started from.
      if (faces === 'outside' || (faces === 'both' && shape.kind !== 'polygon'))
        expect(distanceInside(shape, x + 3 * normalX, y + 3 * normalY)).toBeCloseTo(-3, 9);
    }
  });

  it.each(cases)(
    'leaves no gap wider than a step, on the edge and at the ends of the normals: %j',
    (shape) => {
      const points = walkEdge(shape, 0.25, 3).filter(({ faces }) => faces !== 'inside');
      points.forEach((point, i) => {
        const next = points[(i + 1) % points.length]!;
        expect(Math.hypot(next.x - point.x, next.y - point.y)).toBeLessThan(0.2501);
        const end = (p: typeof point) => [p.x + 3 * p.normalX, p.y + 3 * p.normalY] as const;
        const [ax, ay] = end(point);
        const [bx, by] = end(next);
        const atInnerCorner = shape.kind === 'polygon' && Math.hypot(bx - ax, by - ay) > 3;
        if (!atInnerCorner) expect(Math.hypot(bx - ax, by - ay)).toBeLessThan(0.2501);
      });
    },
  );

  it('fans out at outer corners only, and inward at the one inner corner', () => {
    const points = walkEdge({ kind: 'polygon', box, pointsMm: lShape }, 0.25, 3);
    const inner = points.filter(({ faces }) => faces === 'inside');
    expect(new Set(inner.map(({ x, y }) => `${x},${y}`))).toEqual(new Set(['35,37']));
    expect(
      new Set(points.filter(({ faces }) => faces === 'outside').map(({ x, y }) => `${x},${y}`)).size,
    ).toBe(5);
  });
});
