import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { findPolygonFault } from '../../src/catalogue/polygon-faults.ts';

type Points = readonly (readonly [number, number])[];

const square: Points = [
  [0, 0],
  [10, 0],
  [10, 10],
  [0, 10],
];

describe('findPolygonFault', () => {
  it.each<readonly [string, Points]>([
    ['a square', square],
    ['the other way round', [...square].reverse()],
    ['closed by hand', [...square, square[0]!]],
    ['a repeated point', [square[0]!, ...square]],
    [
      'a point on a side',
      [
        [0, 0],
        [5, 0],
        [10, 0],
        [10, 10],
        [0, 10],
      ],
    ],
    [
      'an inward corner',
      [
        [0, 0],
        [10, 0],
        [5, 5],
        [10, 10],
        [0, 10],
      ],
    ],
    [
      'a triangle',
      [
        [0, 0],
        [10, 0],
        [0, 10],
      ],
    ],
  ])('takes %s', (_, points) => {
    for (const same of turnsOf(points)) expect(findPolygonFault(same, 10, 10)).toBeNull();
  });

  it.each<readonly [string, Points]>([
    ['nothing', []],
    [
      'two points, one of them twice',
      [
        [0, 0],
        [10, 10],
        [10, 10],
      ],
    ],
    [
      'a bow tie',
      [
        [0, 0],
        [10, 10],
        [10, 0],
        [0, 10],
      ],
    ],
    [
      'a corner that touches a side',
      [
        [0, 0],
        [10, 0],
        [10, 10],
        [5, 0],
        [0, 10],
      ],
    ],
    [
      'a corner used twice',
      [
        [0, 0],
        [5, 5],
        [10, 0],
        [10, 10],
        [5, 5],
        [0, 10],
      ],
    ],
    [
      'a spike that folds back',
      [
        [0, 0],
        [10, 0],
        [10, 10],
        [10, 5],
        [0, 10],
      ],
    ],
    [
      'sides that lie on each other',
      [
        [0, 0],
        [10, 0],
        [10, 10],
        [0, 10],
        [0, 5],
        [2, 5],
        [0, 5],
        [0, 2],
      ],
    ],
    [
      'all in one line',
      [
        [0, 0],
        [5, 5],
        [10, 10],
      ],
    ],
    [
      'a smaller box',
      [
        [0, 0],
        [9, 0],
        [9, 10],
        [0, 10],
      ],
    ],
    [
      'a shifted box',
      [
        [1, 0],
        [11, 0],
        [11, 10],
        [1, 10],
      ],
    ],
  ])('refuses %s', (_, points) => {
    for (const same of turnsOf(points)) expect(findPolygonFault(same, 10, 10)).not.toBeNull();
  });

  it('takes every star round its middle', () => {
    const radii = fc.array(fc.double({ min: 1, max: 5, noNaN: true }), { minLength: 5, maxLength: 20 });
    fc.assert(
      fc.property(radii, (lengths) => {
        const star = lengths.map((radius, i) => at((2 * Math.PI * i) / lengths.length, radius));
        expect(faultOf(star)).toBeNull();
      }),
      { seed: 5 },
    );
  });

  // Of points in convex position only the order round the hull does not cross itself.
  it('takes points of a circle in the order round it, either way, and in no other', () => {
    const order = fc.shuffledSubarray([0, 1, 2, 3, 4, 5, 6], { minLength: 4 });
    fc.assert(
      fc.property(order, (numbers) => {
        const points = numbers.map((n) => at((2 * Math.PI * n) / 7, 5));
        expect(faultOf(points) === null).toBe(isRound(numbers));
      }),
      { seed: 6, numRuns: 400 },
    );
  });
});

/** The same outline begun at each of its points, either way round. */
function turnsOf(points: Points): readonly Points[] {
  const begun = points.map((_, i) => [...points.slice(i), ...points.slice(0, i)]);
  return points.length === 0 ? [points] : [...begun, ...begun.map((one) => [...one].reverse())];
}

function at(angle: number, radius: number): readonly [number, number] {
  return [radius * Math.cos(angle), radius * Math.sin(angle)];
}

/** Moved to the corner of its own box, so that only its sides are judged. */
function faultOf(points: Points): string | null {
  const left = Math.min(...points.map(([x]) => x));
  const top = Math.min(...points.map(([, y]) => y));
  const moved = points.map(([x, y]) => [x - left, y - top] as const);
  return findPolygonFault(moved, Math.max(...moved.map(([x]) => x)), Math.max(...moved.map(([, y]) => y)));
}

/** Whether the numbers rise once round, or fall once round, wherever they begin. */
function isRound(numbers: readonly number[]): boolean {
  const rises = numbers.filter((n, i) => n < numbers[(i + 1) % numbers.length]!).length;
  return rises === 1 || rises === numbers.length - 1;
}
