import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { findConvexHull } from '../../src/geometry/convex-hull.ts';
import { findLargestScale } from '../../src/geometry/largest-scale.ts';
import type { Shape } from '../../src/geometry/shape.ts';
import { distanceInside } from '../../src/geometry/signed-distance.ts';

const square = [
  { x: -1, y: -1 },
  { x: 1, y: -1 },
  { x: 1, y: 1 },
  { x: -1, y: 1 },
];
const middle = { x: 50, y: 50 };
const box = { x: 0, y: 0, width: 100, height: 100 };
const within = (shape: Shape, safeMm: number) => (x: number, y: number) =>
  distanceInside(shape, x, y) - safeMm;
const convex = { convex: true, reachMm: 80, stepMm: 0.25 };

describe('findLargestScale', () => {
  it('a square in a square: half the width less the inset', () => {
    expect(findLargestScale(square, middle, within({ kind: 'rect', box }, 5), convex)).toBeCloseTo(45, 12);
  });

  it('a square in a circle: its corners touch, so 1/sqrt 2 of the radius', () => {
    expect(findLargestScale(square, middle, within({ kind: 'circle', box }, 5), convex)).toBeCloseTo(
      45 / Math.SQRT2,
      12,
    );
  });

  it('is 0 when the middle has no safe area, Infinity when nothing limits it', () => {
    expect(findLargestScale(square, middle, within({ kind: 'rect', box }, 51), convex)).toBe(0);
    expect(findLargestScale([{ x: 0, y: 0 }], middle, within({ kind: 'rect', box }, 5), convex)).toBe(
      Infinity,
    );
  });

  it('a notch that the middle can see limits the points below it, though the hull would fit', () => {
    const notched: Shape = {
      kind: 'polygon',
      box,
      pointsMm: [
        [0, 0],
        [45, 0],
        [50, 30],
        [55, 0],
        [100, 0],
        [100, 100],
        [0, 100],
      ],
    };
    const points = Array.from({ length: 201 }, (_, i) => ({ x: i / 100 - 1, y: -1 }));
    const scale = findLargestScale(points, middle, within(notched, 0), { ...convex, convex: false });
    expect(scale).toBeCloseTo(20, 9);
  });

  it('the search from above agrees with bisection where both may be used', () => {
    const shape: Shape = { kind: 'ellipse', box: { ...box, height: 60 } };
    const centre = { x: 50, y: 30 };
    const one = findLargestScale(square, centre, within(shape, 4), convex);
    const two = findLargestScale(square, centre, within(shape, 4), { ...convex, convex: false });
    expect(two).toBeCloseTo(one, 9);
  });
});

describe('findConvexHull', () => {
  it('holds every point and turns one way only', () => {
    fc.assert(
      fc.property(
        fc.array(fc.record({ x: fc.integer({ min: 0, max: 50 }), y: fc.integer({ min: 0, max: 50 }) }), {
          minLength: 3,
        }),
        (points) => {
          const hull = findConvexHull(points);
          hull.forEach((a, i) => {
            const b = hull[(i + 1) % hull.length]!;
            for (const p of points)
              expect((b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x)).toBeGreaterThanOrEqual(0);
          });
        },
      ),
      { seed: 5 },
    );
  });
});
