import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Development, developBand } from '../../src/geometry/development.ts';
import { boxOfSector, fromStrip, middleRadiusOf, type Sector, toStrip } from '../../src/geometry/sector.ts';

const codeOf = (run: () => unknown) => {
  try {
    run();
  } catch (error) {
    return (error as { code?: string }).code;
  }
  return 'none';
};

/**
 * Worked by hand from s = sqrt(h² + ((Dt - Db) / 2)²), R = s Dwide / |Dt - Db|, r = R - s, A = pi |Dt - Db| / s, with the
 * overlap at R and the gap at mid band (development of a right circular cone, any handbook of geometry). Columns: upper
 * and lower diameter, height, overlap or gap | kind, R, r, angle in degrees with overlap or gap, sagitta of the upper edge, box.
 */
const BODIES: readonly (readonly [
  string,
  number,
  number,
  number,
  { overlapMm: number } | { gapMm: number },
  readonly [number, number, number, number, number, number] | null,
])[] = [
  ['cylinder, mug', 82, 82, 88.9, { gapMm: 41.7 }, null],
  ['cylinder, tumbler', 74, 74, 208.3, { overlapMm: 3 }, null],
  ['less than the limit of a cylinder', 74.04, 74, 100, { overlapMm: 3 }, null],
  ['so little taper that a rectangle is right', 74.2, 74, 100, { overlapMm: 0 }, null],
  [
    'slightly tapered tumbler',
    74.9,
    69.9797,
    205,
    { overlapMm: 3 },
    [3120.91, 2915.89, 4.3748, 2.2745, 238.23, 207.14],
  ],
  [
    'tapered tumbler',
    87.575,
    70.95,
    140,
    { overlapMm: 3 },
    [738.77, 598.53, 21.5701, 13.0496, 276.49, 150.82],
  ],
  [
    'tapered mug with a handle',
    87.1481,
    67.4722,
    85,
    { gapMm: 45 },
    [378.99, 293.43, 33.7176, 16.286, 219.81, 98.2],
  ],
  [
    'large tapered tumbler',
    99.92,
    76.12,
    170,
    { overlapMm: 3 },
    [715.461, 545.045, 25.3787, 17.4749, 314.324, 183.729],
  ],
  ['inverted', 70.95, 87.575, 140, { overlapMm: 3 }, [738.77, 598.53, 21.5701, 10.5723, 276.49, 150.82]],
  [
    'so strongly tapered that its paper is more than half a ring',
    100,
    20,
    40,
    { overlapMm: 0 },
    [70.7107, 14.1421, 254.5584, 113.5401, 141.4214, 113.5401],
  ],
];

describe('the development of a round band', () => {
  it.each(BODIES)(
    'is that of a worked table: %s',
    (_, topDiameterMm, bottomDiameterMm, heightMm, way, worked) => {
      const paper = developBand({ topDiameterMm, bottomDiameterMm, heightMm }, way);
      if (worked === null) {
        expect(paper.kind).toBe('rectangle');
        expect([paper.outerRadiusMm, paper.innerRadiusMm, paper.angleDeg, paper.sagittaMm]).toEqual([
          null,
          null,
          0,
          0,
        ]);
        return;
      }
      const [R, r, angle, sagitta, width, height] = worked;
      expect(paper.kind).toBe('sector');
      expect(Math.abs(paper.outerRadiusMm! / R - 1)).toBeLessThan(2e-4);
      expect(Math.abs(paper.innerRadiusMm! / r - 1)).toBeLessThan(2e-4);
      expect(Math.abs(paper.angleDeg - angle)).toBeLessThan(0.006);
      expect(Math.abs(paper.sagittaMm - sagitta)).toBeLessThan(0.02);
      expect(Math.abs(paper.widthMm - width)).toBeLessThan(0.1);
      expect(Math.abs(paper.heightMm - height)).toBeLessThan(0.06);
    },
  );

  it('tells what a rectangle would get wrong, signed', () => {
    const paper = developBand(
      { topDiameterMm: 87.575, bottomDiameterMm: 70.95, heightMm: 140 },
      { overlapMm: 3 },
    );
    // Mean of 275.12 and 222.90 is 249.01: 26.11 too short at the rim.
    expect(paper.rectangleErrorMm.rim).toBeCloseTo(-26.114, 2);
    expect(paper.rectangleErrorMm.foot).toBeCloseTo(26.114, 2);
    const asked = developBand(
      { topDiameterMm: 87.575, bottomDiameterMm: 70.95, heightMm: 140 },
      { overlapMm: 3 },
      'rectangle',
    );
    expect(asked).toMatchObject({ kind: 'rectangle', rectangleErrorMm: paper.rectangleErrorMm });
    expect(asked.widthMm).toBeCloseTo(252.01, 1);
  });

  it.each([
    ['no height', { topDiameterMm: 80, bottomDiameterMm: 70, heightMm: 0 }, { overlapMm: 0 }],
    ['no diameter', { topDiameterMm: 80, bottomDiameterMm: 0, heightMm: 100 }, { overlapMm: 0 }],
    ['not a number', { topDiameterMm: Number.NaN, bottomDiameterMm: 70, heightMm: 100 }, { overlapMm: 0 }],
    [
      'a gap of the whole way round',
      { topDiameterMm: 80, bottomDiameterMm: 80, heightMm: 100 },
      { gapMm: 251.4 },
    ],
    ['an angle over 360', { topDiameterMm: 100, bottomDiameterMm: 1, heightMm: 1 }, { overlapMm: 20 }],
  ])('refuses %s', (_, band, way) => {
    expect(codeOf(() => developBand(band, way))).toBe('bad-wrap');
  });

  const bands = fc.record({
    topDiameterMm: fc.double({ min: 30, max: 120, noNaN: true }),
    bottomDiameterMm: fc.double({ min: 30, max: 120, noNaN: true }),
    heightMm: fc.double({ min: 30, max: 250, noNaN: true }),
  });

  it('has arcs as long as the body is round, above and below', () => {
    fc.assert(
      fc.property(bands, (band) => {
        const paper = developBand(band, { overlapMm: 0 });
        if (!paper.sector) return;
        const [above, below] = arcsOf(paper);
        expect(above).toBeCloseTo(Math.PI * band.topDiameterMm, 6);
        expect(below).toBeCloseTo(Math.PI * band.bottomDiameterMm, 6);
      }),
    );
  });

  it('takes points of the strip to the paper and back, and keeps them in its box', () => {
    fc.assert(
      fc.property(
        bands,
        fc.double({ min: 0, max: 1, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (band, u, v) => {
          const { sector, strip } = developBand(band, { overlapMm: 2 });
          if (!sector) return;
          const point = { x: u * strip.widthMm, y: v * strip.heightMm };
          const onPaper = fromStrip(sector, point);
          const back = toStrip(sector, onPaper);
          expect(back.x).toBeCloseTo(point.x, 6);
          expect(back.y).toBeCloseTo(point.y, 6);
          const box = boxOfSector(sector);
          expect(onPaper.x >= -1e-9 && onPaper.x <= box.width + 1e-9).toBe(true);
          expect(onPaper.y >= -1e-9 && onPaper.y <= box.height + 1e-9).toBe(true);
        },
      ),
    );
  });

  it('fills its box: some point of the rim touches each side', () => {
    fc.assert(
      fc.property(bands, (band) => {
        const { sector, strip } = developBand(band, { overlapMm: 2 });
        if (!sector) return;
        const box = boxOfSector(sector);
        const rim = Array.from({ length: 2001 }, (_, i) => (i / 2000) * strip.widthMm).flatMap((x) => [
          fromStrip(sector, { x, y: 0 }),
          fromStrip(sector, { x, y: strip.heightMm }),
        ]);
        expect(Math.min(...rim.map(({ x }) => x))).toBeCloseTo(0, 2);
        expect(Math.max(...rim.map(({ x }) => x))).toBeCloseTo(box.width, 2);
        expect(Math.min(...rim.map(({ y }) => y))).toBeCloseTo(0, 2);
        expect(Math.max(...rim.map(({ y }) => y))).toBeCloseTo(box.height, 2);
      }),
      { numRuns: 50 },
    );
  });
});

/** Lengths of the upper and the lower arc of the paper, less what an overlap adds. */
function arcsOf({ sector }: Development): readonly [number, number] {
  const { opens, outerRadiusMm, innerRadiusMm, angleRad }: Sector = sector!;
  expect(middleRadiusOf(sector!)).toBeGreaterThan(innerRadiusMm);
  const [outer, inner] = [outerRadiusMm * angleRad, innerRadiusMm * angleRad];
  return opens === 'below' ? [outer, inner] : [inner, outer];
}
