import type { PointMm, RectMm } from './rectangle.ts';

/** A flat ring sector, upright and even to left and right: the paper of a tapered body. */
export interface Sector {
  readonly outerRadiusMm: number;
  readonly innerRadiusMm: number;
  /** Above 0, below 2 pi. */
  readonly angleRad: number;
  /** Where the middle of its arcs lies: below the paper of a body that is wider above. */
  readonly opens: 'below' | 'above';
}

/**
 * Its box, with the top left corner at 0, 0. Up to 180 degrees as wide as the chord of the outer arc and
 * R - r cos(A / 2) high; beyond, 2 R wide and R - R cos(A / 2) high.
 */
export function boxOfSector({ outerRadiusMm: R, innerRadiusMm: r, angleRad }: Sector): RectMm {
  const half = angleRad / 2;
  const wide = angleRad > Math.PI;
  const reach = (wide ? R : r) * Math.cos(half);
  return { x: 0, y: 0, width: wide ? 2 * R : 2 * R * Math.sin(half), height: R - reach };
}

/** Where the arcs have their middle, in the frame of the box. */
export function apexOf(sector: Sector): PointMm {
  const { width, height } = boxOfSector(sector);
  return {
    x: width / 2,
    y: sector.opens === 'below' ? sector.outerRadiusMm : height - sector.outerRadiusMm,
  };
}

/** The sector and so much more on every side; an inner radius never falls below 0. Angles grow by the length at mid height. */
export function growSector(sector: Sector, byMm: number): Sector {
  const { outerRadiusMm, innerRadiusMm, angleRad } = sector;
  return {
    ...sector,
    outerRadiusMm: outerRadiusMm + byMm,
    innerRadiusMm: Math.max(0, innerRadiusMm - byMm),
    angleRad: Math.min(2 * Math.PI - 1e-9, angleRad + (2 * byMm) / middleRadiusOf(sector)),
  };
}

/** The box of the sector grown so much on every side, in the frame of its own box. */
export function boxAround(sector: Sector, byMm: number): RectMm {
  const grown = growSector(sector, byMm);
  const [from, to] = [apexOf(sector), apexOf(grown)];
  return { ...boxOfSector(grown), x: from.x - to.x, y: from.y - to.y };
}

export function middleRadiusOf({ outerRadiusMm, innerRadiusMm }: Sector): number {
  return (outerRadiusMm + innerRadiusMm) / 2;
}

/** A point of the strip (along the arc at mid height, down the slant; origin its upper left end) on the paper, in the frame of the box. */
export function fromStrip(sector: Sector, { x, y }: PointMm): PointMm {
  const apex = apexOf(sector);
  const angle = x / middleRadiusOf(sector) - sector.angleRad / 2;
  const radius = sector.opens === 'below' ? sector.outerRadiusMm - y : sector.innerRadiusMm + y;
  const down = sector.opens === 'below' ? -1 : 1;
  return { x: apex.x + radius * Math.sin(angle), y: apex.y + down * radius * Math.cos(angle) };
}

/** The way back. */
export function toStrip(sector: Sector, { x, y }: PointMm): PointMm {
  const apex = apexOf(sector);
  const down = sector.opens === 'below' ? -1 : 1;
  const [across, along] = [x - apex.x, (y - apex.y) * down];
  const radius = Math.hypot(across, along);
  const angle = Math.atan2(across, along);
  return {
    x: (angle + sector.angleRad / 2) * middleRadiusOf(sector),
    y: sector.opens === 'below' ? sector.outerRadiusMm - radius : radius - sector.innerRadiusMm,
  };
}
