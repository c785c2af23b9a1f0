import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { offsetShape } from '../../src/geometry/offset-shape.ts';
import type { Shape } from '../../src/geometry/shape.ts';
import { distanceInside } from '../../src/geometry/signed-distance.ts';

const box = { x: 3, y: -2, width: 80, height: 50 };
const SHAPES: Readonly<Record<string, Shape>> = {
  rect: { kind: 'rect', box },
  'rounded-rect': { kind: 'rounded-rect', box, cornerRadiusMm: 6 },
  circle: { kind: 'circle', box: { x: 3, y: -2, width: 50, height: 50 } },
  ellipse: { kind: 'ellipse', box },
  stadium: { kind: 'stadium', box },
  polygon: {
    kind: 'polygon',
    box,
    // An arrow: sharp corners, and one that points inward.
    pointsMm: [
      [0, 0],
      [80, 25],
      [0, 50],
      [20, 25],
    ],
  },
};

describe('offsetShape', () => {
  it.each(Object.entries(SHAPES))('of %s is the line at that distance', (_, shape) => {
    fc.assert(
      fc.property(
        fc.double({ min: -4, max: 8, noNaN: true }),
        fc.double({ min: -15, max: 100, noNaN: true }),
        fc.double({ min: -15, max: 65, noNaN: true }),
        (outwardMm, xMm, yMm) => {
          const line = offsetShape(shape, outwardMm)!;
          // Chords of half a millimetre, and corners that such a chord cuts off.
          const tolerance = line.kind === 'polygon' && outwardMm !== 0 ? 0.5 : 1e-9;
          const wanted = distanceInside(shape, xMm, yMm) + outwardMm;
          const got = distanceInside(line, xMm, yMm);
          if (Math.abs(wanted) > tolerance) expect(Math.sign(got)).toBe(Math.sign(wanted));
        },
      ),
    );
  });

  it('of boxes and circles keeps the kind that people draw: the known answers of a tile', () => {
    const tile: Shape = { kind: 'rect', box: { x: 0, y: 0, width: 60, height: 40 } };
    expect(offsetShape(tile, -5)).toEqual({ kind: 'rect', box: { x: 5, y: 5, width: 50, height: 30 } });
    expect(offsetShape(tile, 3)).toEqual({
      kind: 'rounded-rect',
      box: { x: -3, y: -3, width: 66, height: 46 },
      cornerRadiusMm: 3,
    });
    expect(offsetShape(tile, 0)).toBe(tile);
  });

  it.each(Object.entries(SHAPES))('of %s is null deeper inside than any point of it', (_, shape) => {
    expect(offsetShape(shape, -26)).toBeNull();
  });
});
