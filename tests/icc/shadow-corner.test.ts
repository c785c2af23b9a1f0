import { describe, expect, it } from 'vitest';
import { findShadowCorner } from '../../src/icc/shadow-corner.ts';

const asked = Array.from({ length: 256 }, (_, i) => (i * 100) / 255);

/** A parabola above its vertex, flat below: what a printer with that black makes of a ramp, relative to its range. */
const bent = (vertex: number) => asked.map((l) => 10 + 90 * (Math.max(0, l - vertex) / (100 - vertex)) ** 2);

describe('findShadowCorner', () => {
  it('needs no fit for a relative trip that is straight above the shadows', () => {
    expect(
      findShadowCorner(
        asked,
        asked.map((l) => Math.max(9, l)),
        'relative',
      ),
    ).toBe('straight');
  });

  it('fits perceptual trips even when they are straight', () => {
    const corner = findShadowCorner(
      asked,
      asked.map((l) => Math.max(9, l)),
      'perceptual',
    );
    expect(corner).toBeTypeOf('number');
  });

  // The parabola through points of a parabola is that parabola. Its discriminant is 0, which counts as no root.
  it('finds the root of a trip built as a parabola', () => {
    // (l + 20)(l - 15) / (120 * 85): roots -20 and 15.
    const printed = asked.map((l) => 5 + 95 * Math.max(0, ((l + 20) * (l - 15)) / (120 * 85)));
    for (const intent of ['relative', 'perceptual', 'saturation'] as const)
      expect(findShadowCorner(asked, printed, intent)).toBeCloseTo(15, 6);
  });

  it('finds the foot of a straight line', () => {
    const printed = asked.map((l) => 20 + 80 * Math.max(0, (l - 12) / 88));
    expect(findShadowCorner(asked, printed, 'perceptual')).toBeCloseTo(12, 4);
  });

  it.each([
    ['nothing is printed', asked.map(() => 50)],
    ['it runs the wrong way', asked.map((l) => 100 - l)],
    ['all shadows are one', asked.map((l) => (l < 90 ? 5 : 100))],
  ])('finds none where %s', (_, printed) =>
    expect(findShadowCorner(asked, printed, 'perceptual')).toBe(null),
  );

  it('stays within 0 and 50', () => {
    expect(findShadowCorner(asked, bent(90), 'perceptual')).toBeGreaterThanOrEqual(0);
    expect(findShadowCorner(asked, bent(90), 'perceptual')).toBeLessThanOrEqual(50);
  });

  it('is not disturbed by a dent', () => {
    const printed = asked.map((l, i) => Math.max(9, l) - (i % 7 === 3 ? 1.5 : 0));
    expect(findShadowCorner(asked, printed, 'relative')).toBe('straight');
  });
});
