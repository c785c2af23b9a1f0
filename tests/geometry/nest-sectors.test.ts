import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { distanceToSector, growLaid, laySector, outlineOfSector } from '../../src/geometry/laid-sector.ts';
import { findNestingPitch } from '../../src/geometry/nest-sectors.ts';
import { boxOfSector, growSector, type Sector } from '../../src/geometry/sector.ts';
import { outlineDistance, outlineOf, slackOf } from './outline-distance.ts';

const sectors = (mostAngleRad = 2 * Math.PI - 0.02) =>
  fc
    .record({
      outerRadiusMm: fc.double({ min: 5, max: 900, noNaN: true }),
      share: fc.double({ min: 0, max: 0.98, noNaN: true }),
      angleRad: fc.double({ min: 0.02, max: mostAngleRad, noNaN: true }),
      opens: fc.constantFrom('below' as const, 'above' as const),
    })
    .map(({ share, ...sector }): Sector => ({ ...sector, innerRadiusMm: share * sector.outerRadiusMm }));
const gaps = fc.constantFrom(0, 0.4, 3, 10, 26);

const STEPS = 120;
const apart = (sector: Sector, alongMm: number) =>
  outlineDistance(outlineOf(sector, { x: 0, y: 0 }, STEPS), outlineOf(sector, { x: 0, y: alongMm }, STEPS));

describe('findNestingPitch', () => {
  it('is the least from which on two outlines come no nearer than the gap, by the distance of polygons', () => {
    fc.assert(
      fc.property(
        sectors(),
        gaps,
        fc.double({ min: 0, max: 1.5, noNaN: true }),
        fc.boolean(),
        (sector, gapMm, more, up) => {
          const pitchMm = findNestingPitch(sector, gapMm);
          const slackMm = 2 * slackOf(sector, STEPS) + 1e-9 * sector.outerRadiusMm;
          const way = up ? -1 : 1;
          // Chords lie within outer arcs and reach over inner ones: polygons may come nearer by that, and be further apart.
          const exactly = apart(sector, way * pitchMm);
          expect(exactly).toBeGreaterThanOrEqual(gapMm - slackMm);
          expect(exactly).toBeLessThanOrEqual(gapMm + slackMm);
          expect(apart(sector, way * pitchMm * (1 + more))).toBeGreaterThanOrEqual(gapMm - slackMm);
          // Where corners meet the arc of the other steeply enough that 5 % of the pitch are more than what chords hide.
          const steep = Math.cos(Math.min(Math.PI, sector.angleRad) / 2);
          if (0.02 * pitchMm * steep > slackMm)
            expect(apart(sector, way * 0.95 * pitchMm)).toBeLessThan(Math.max(gapMm, 1e-9));
        },
      ),
      { numRuns: 150 },
    );
  });

  it('is by the box where there is no inner radius, and less where there is one', () => {
    fc.assert(
      fc.property(sectors(Math.PI), gaps, (sector, gapMm) => {
        const boxMm = boxOfSector(sector).height + gapMm;
        expect(findNestingPitch(sector, gapMm)).toBeLessThanOrEqual(boxMm + 1e-9);
        expect(findNestingPitch({ ...sector, innerRadiusMm: 0 }, gapMm)).toBeCloseTo(
          sector.outerRadiusMm + gapMm,
          9,
        );
      }),
    );
    fc.assert(
      fc.property(sectors(), gaps, (sector, gapMm) => {
        expect(findNestingPitch(sector, gapMm)).toBeLessThanOrEqual(
          boxOfSector(sector).height + gapMm + 1e-9,
        );
      }),
    );
  });

  it.each([
    // R, r, angle in degrees, gap; what follows by hand.
    // The corners of the inner arc, 30 to the side, meet the outer arc at 40 above the apex: 50 - 30 - 40 is a right triangle.
    ['right triangles', 50, 50 * 0.6, 180, 0, 40],
    // No more than a line: corners 60 to the side, where an arc 2 further out is 80 above the apex.
    ['a line', 98, 98, (2 * Math.asin(60 / 98) * 180) / Math.PI, 2, 80 - Math.sqrt(98 ** 2 - 60 ** 2)],
    // Beyond 180 degrees: legs stand square on the outer arc, R / sin h.
    ['legs on an arc', 60, 10, 240, 0, 60 / Math.sin(Math.PI / 3)],
    // Almost a whole ring: one stands upon the other.
    ['a ring but for a slit', 60, 50, 358, 0, 2 * 60 * Math.cos(Math.PI / 180)],
  ])('of %s is as derived by hand', (_, R, r, degrees, gapMm, expected) => {
    const sector = {
      outerRadiusMm: R,
      innerRadiusMm: r,
      angleRad: (degrees * Math.PI) / 180,
      opens: 'below',
    } as const;
    expect(findNestingPitch(sector, gapMm)).toBeCloseTo(expected, 9);
  });
});

describe('a sector on a page', () => {
  it('lies in its box, is as far from a point as its polygon, and its path is its outline', () => {
    fc.assert(
      fc.property(
        sectors(),
        fc.double({ min: -1, max: 1, noNaN: true }),
        fc.double({ min: -1, max: 1, noNaN: true }),
        (sector, across, down) => {
          const box = { ...boxOfSector(sector), x: 20, y: 30 };
          const laid = laySector(sector, box);
          const outline = outlineOf(sector, laid.apexMm, 400);
          const slackMm = slackOf(sector, 400) + 1e-9;
          const least = (axis: 'x' | 'y') => Math.min(...outline.map((point) => point[axis]));
          const most = (axis: 'x' | 'y') => Math.max(...outline.map((point) => point[axis]));
          expect(Math.abs(least('x') - box.x)).toBeLessThanOrEqual(slackMm);
          expect(Math.abs(least('y') - box.y)).toBeLessThanOrEqual(slackMm);
          expect(Math.abs(most('x') - box.x - box.width)).toBeLessThanOrEqual(slackMm);
          expect(Math.abs(most('y') - box.y - box.height)).toBeLessThanOrEqual(slackMm);
          const point = { x: box.x + box.width * (0.5 + across), y: box.y + box.height * (0.5 + down) };
          const byPolygon = outlineDistance(outline, [point, point]);
          expect(Math.abs(distanceToSector(laid, point) - byPolygon)).toBeLessThanOrEqual(slackMm);
          for (const command of outlineOfSector(laid)) {
            if (command[0] === 'Z') continue;
            const [x, y] = command.slice(-2) as [number, number];
            expect(distanceToSector(laid, { x, y })).toBeLessThan(1e-6);
          }
        },
      ),
    );
  });

  it('has curves that leave the arcs by under a ten-millionth of the radius', () => {
    const laid = laySector(
      { outerRadiusMm: 1000, innerRadiusMm: 800, angleRad: 1.9, opens: 'below' },
      { x: 0, y: 0, ...{ width: 2 * 1000 * Math.sin(0.95), height: 1000 - 800 * Math.cos(0.95) } },
    );
    const from = { x: 0, y: 0 };
    let curves = 0;
    for (const command of outlineOfSector(laid)) {
      if (command[0] === 'C') {
        const [, ax, ay, bx, by, x, y] = command;
        curves += 1;
        const radius = curves <= 8 ? 1000 : 800;
        for (const t of [0.2, 0.5, 0.8]) {
          const mix = (a: number, b: number, c: number, d: number) =>
            (1 - t) ** 3 * a + 3 * (1 - t) ** 2 * t * b + 3 * (1 - t) * t * t * c + t ** 3 * d;
          const on = { x: mix(from.x, ax, bx, x), y: mix(from.y, ay, by, y) };
          const off = Math.hypot(on.x - laid.apexMm.x, on.y - laid.apexMm.y) - radius;
          expect(Math.abs(off)).toBeLessThan(radius * 1e-7);
        }
      }
      if (command[0] !== 'Z') [from.x, from.y] = command.slice(-2) as [number, number];
    }
    expect(curves).toBe(16);
  });

  it('grows about its apex', () => {
    const sector: Sector = { outerRadiusMm: 90, innerRadiusMm: 50, angleRad: 1, opens: 'above' };
    const laid = laySector(sector, { ...boxOfSector(sector), x: 5, y: 6 });
    expect(growLaid(laid, 3)).toEqual({ ...growSector(sector, 3), apexMm: laid.apexMm });
  });
});
