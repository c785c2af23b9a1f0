import type { Path, PathCommand } from './path.ts';
import type { PointMm, RectMm } from './rectangle.ts';
import { apexOf, boxOfSector, growSector, type Sector } from './sector.ts';

/** A sector on a page: the middle of its arcs lies at `apexMm`, from the top left of the page. */
export interface LaidSector extends Sector {
  readonly apexMm: PointMm;
}

/** The sector that fills this box, which has its size. */
export function laySector(sector: Sector, { x, y, width, height }: RectMm): LaidSector {
  const [apex, box] = [apexOf(sector), boxOfSector(sector)];
  return {
    ...sector,
    apexMm: { x: x + (width - box.width) / 2 + apex.x, y: y + (height - box.height) / 2 + apex.y },
  };
}

/** The same and so much more on every side, as `growSector`. */
export function growLaid(sector: LaidSector, byMm: number): LaidSector {
  return { ...growSector(sector, byMm), apexMm: sector.apexMm };
}

/** Across a sector, to the right, and along its axis, outward from its apex. */
function aboutApex(
  { apexMm, opens }: LaidSector,
  { x, y }: PointMm,
): readonly [across: number, along: number] {
  return [x - apexMm.x, opens === 'below' ? apexMm.y - y : y - apexMm.y];
}

/** From a point to the nearest of the sector, by the shortest way; 0 within it. */
export function distanceToSector(sector: LaidSector, point: PointMm): number {
  const { outerRadiusMm, innerRadiusMm, angleRad } = sector;
  const [across, along] = aboutApex(sector, point);
  const half = angleRad / 2;
  const radius = Math.hypot(across, along);
  if (Math.abs(Math.atan2(across, along)) <= half)
    return Math.max(0, radius - outerRadiusMm, innerRadiusMm - radius);
  // Both halves are alike. Beyond the angle the nearest point is one of the straight side.
  const [sin, cos] = [Math.sin(half), Math.cos(half)];
  const out = Math.min(outerRadiusMm, Math.max(innerRadiusMm, Math.abs(across) * sin + along * cos));
  return Math.hypot(Math.abs(across) - out * sin, along - out * cos);
}

/** Its outline. Arcs are cubic curves of at most 15 degrees, off by under a ten-millionth of their radius (derived). */
export function outlineOfSector(sector: LaidSector): Path {
  const { apexMm, opens, outerRadiusMm: R, innerRadiusMm: r, angleRad } = sector;
  const at = (radius: number, angle: number, tangent: number): [number, number] => {
    const along = radius * Math.cos(angle) - tangent * Math.sin(angle);
    const across = radius * Math.sin(angle) + tangent * Math.cos(angle);
    return [apexMm.x + across, opens === 'below' ? apexMm.y - along : apexMm.y + along];
  };
  const count = Math.ceil(angleRad / (Math.PI / 12));
  const step = angleRad / count;
  const reach = (4 / 3) * Math.tan(step / 4);
  const arc = (radius: number, from: number, by: number): PathCommand[] =>
    Array.from({ length: count }, (_, i) => {
      const [start, end] = [from + i * by, from + (i + 1) * by];
      const control = radius * reach * Math.sign(by);
      return ['C', ...at(radius, start, control), ...at(radius, end, -control), ...at(radius, end, 0)];
    });
  const half = angleRad / 2;
  return [
    ['M', ...at(R, -half, 0)],
    ...arc(R, -half, step),
    ['L', ...at(r, half, 0)],
    ...arc(r, half, -step),
    ['Z'],
  ];
}
