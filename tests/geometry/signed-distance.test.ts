import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Shape } from '../../src/geometry/shape.ts';
import { distanceInside } from '../../src/geometry/signed-distance.ts';

const box = { x: 10, y: 20, width: 80, height: 60 };

/** Brute force: nearest of many points of the outline. The outline is written down anew here, not taken from the code. */
function outlinePoints(shape: Shape, count: number): [number, number][] {
  const { x, y, width, height } = shape.box;
  const cx = x + width / 2;
  const cy = y + height / 2;
  const points: [number, number][] = [];
  const line = (ax: number, ay: number, bx: number, by: number) => {
    for (let i = 0; i <= count; i += 1)
      points.push([ax + ((bx - ax) * i) / count, ay + ((by - ay) * i) / count]);
  };
  if (shape.kind === 'polygon') {
    shape.pointsMm.forEach(([ax, ay], i) => {
      const [bx, by] = shape.pointsMm[(i + 1) % shape.pointsMm.length]!;
      line(x + ax, y + ay, x + bx, y + by);
    });
    return points;
  }
  if (shape.kind === 'circle' || shape.kind === 'ellipse') {
    for (let i = 0; i < 8 * count; i += 1) {
      const angle = (i * 2 * Math.PI) / (8 * count);
      points.push([cx + (width / 2) * Math.cos(angle), cy + (height / 2) * Math.sin(angle)]);
    }
    return points;
  }
  const radius =
    shape.kind === 'rect' ? 0 : shape.kind === 'stadium' ? Math.min(width, height) / 2 : shape.cornerRadiusMm;
  line(x + radius, y, x + width - radius, y);
  line(x + radius, y + height, x + width - radius, y + height);
  line(x, y + radius, x, y + height - radius);
  line(x + width, y + radius, x + width, y + height - radius);
  for (const [mx, my, from] of [
    [x + radius, y + radius, Math.PI],
    [x + width - radius, y + radius, 1.5 * Math.PI],
    [x + width - radius, y + height - radius, 0],
    [x + radius, y + height - radius, 0.5 * Math.PI],
  ] as const) {
    for (let i = 0; i <= count; i += 1) {
      const angle = from + (i * Math.PI) / 2 / count;
      points.push([mx + radius * Math.cos(angle), my + radius * Math.sin(angle)]);
    }
  }
  return points;
}

const star = [
  [40, 0],
  [50, 20],
  [80, 25],
  [55, 40],
  [60, 60],
  [40, 48],
  [20, 60],
  [25, 40],
  [0, 25],
  [30, 20],
] as const;
const shapes: Shape[] = [
  { kind: 'rect', box },
  { kind: 'rounded-rect', box, cornerRadiusMm: 12 },
  { kind: 'circle', box: { ...box, width: 60 } },
  { kind: 'ellipse', box },
  { kind: 'ellipse', box: { ...box, width: 20 } },
  { kind: 'stadium', box },
  { kind: 'polygon', box, pointsMm: star },
];

describe('distanceInside', () => {
  for (const shape of shapes) {
    it(`is the distance to the nearest of 16,000 points of the outline: ${shape.kind}`, () => {
      const outline = outlinePoints(shape, 2000);
      fc.assert(
        fc.property(
          fc.double({ min: -20, max: 120, noNaN: true }),
          fc.double({ min: -20, max: 120, noNaN: true }),
          (x, y) => {
            const nearest = Math.min(...outline.map(([px, py]) => Math.hypot(px - x, py - y)));
            // Neighbouring points are at most 0.06 mm apart, so the nearest is at most that much too far.
            expect(Math.abs(Math.abs(distanceInside(shape, x, y)) - nearest)).toBeLessThan(0.06);
          },
        ),
        { numRuns: 60, seed: 3 },
      );
    });
  }

  it.each([
    ['rect: 5 mm inside the left side', { kind: 'rect', box } as const, 15, 50, 5],
    ['rect: on the corner', { kind: 'rect', box } as const, 10, 20, 0],
    ['rect: off the corner, a 3-4-5 triangle', { kind: 'rect', box } as const, 7, 16, -5],
    [
      'rounded: middle of a corner circle',
      { kind: 'rounded-rect', box, cornerRadiusMm: 12 } as const,
      22,
      32,
      12,
    ],
    ['circle: middle', { kind: 'circle', box: { ...box, width: 60 } } as const, 40, 50, 30],
    ['ellipse: middle is the shorter half axis away', { kind: 'ellipse', box } as const, 50, 50, 30],
    ['ellipse: end of the long axis', { kind: 'ellipse', box } as const, 95, 50, -5],
    ['stadium: end of the axis', { kind: 'stadium', box } as const, 10, 50, 0],
  ])('%s', (_, shape, x, y, expected) => {
    expect(distanceInside(shape, x, y)).toBeCloseTo(expected, 12);
  });

  it('an ellipse that is a circle agrees with the circle', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -50, max: 150, noNaN: true }),
        fc.double({ min: -50, max: 150, noNaN: true }),
        (x, y) => {
          const round = { ...box, height: 80 };
          const difference =
            distanceInside({ kind: 'ellipse', box: round }, x, y) -
            distanceInside({ kind: 'circle', box: round }, x, y);
          expect(Math.abs(difference)).toBeLessThan(1e-9);
        },
      ),
      { seed: 4 },
    );
  });
});
