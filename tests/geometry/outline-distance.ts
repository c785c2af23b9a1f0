import type { PointMm } from '../../src/geometry/rectangle.ts';
import type { Sector } from '../../src/geometry/sector.ts';

export type Outline = readonly PointMm[];

/** A sector as a polygon, its box from 0, 0: points all on its true outline, so that chords cut arcs by `slackOf` at most. */
export function outlineOf(
  { outerRadiusMm, innerRadiusMm, angleRad, opens }: Sector,
  apexMm: PointMm,
  steps: number,
): Outline {
  const at = (radius: number, step: number): PointMm => {
    const angle = (step / steps - 0.5) * angleRad;
    const along = radius * Math.cos(angle);
    return {
      x: apexMm.x + radius * Math.sin(angle),
      y: opens === 'below' ? apexMm.y - along : apexMm.y + along,
    };
  };
  const all = Array.from({ length: steps + 1 }, (_, step) => step);
  return [
    ...all.map((step) => at(outerRadiusMm, step)),
    ...all.toReversed().map((step) => at(innerRadiusMm, step)),
  ];
}

/** How far a chord of the polygon lies within its arc, at most. */
export function slackOf({ outerRadiusMm, angleRad }: Sector, steps: number): number {
  return outerRadiusMm * (1 - Math.cos(angleRad / steps / 2));
}

/** From polygon to polygon, by all pairs of corner and side; 0 where they cross or one holds the other. */
export function outlineDistance(one: Outline, other: Outline): number {
  if (crosses(one, other) || holds(one, other[0]!) || holds(other, one[0]!)) return 0;
  return Math.min(cornersToSides(one, other), cornersToSides(other, one));
}

function cornersToSides(corners: Outline, sides: Outline): number {
  let nearest = Infinity;
  for (let i = 0; i < sides.length; i += 1) {
    const [a, b] = [sides[i]!, sides[(i + 1) % sides.length]!];
    const [dx, dy] = [b.x - a.x, b.y - a.y];
    const square = dx * dx + dy * dy;
    for (const { x, y } of corners) {
      const t = square === 0 ? 0 : Math.max(0, Math.min(1, ((x - a.x) * dx + (y - a.y) * dy) / square));
      const [px, py] = [x - a.x - t * dx, y - a.y - t * dy];
      nearest = Math.min(nearest, px * px + py * py);
    }
  }
  return Math.sqrt(nearest);
}

function crosses(one: Outline, other: Outline): boolean {
  return one.some((a, i) => {
    const b = one[(i + 1) % one.length]!;
    return other.some((c, j) => {
      const d = other[(j + 1) % other.length]!;
      return side(a, b, c) * side(a, b, d) < 0 && side(c, d, a) * side(c, d, b) < 0;
    });
  });
}

function side(a: PointMm, b: PointMm, p: PointMm): number {
  return (b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x);
}

/** By the even-odd rule. */
function holds(outline: Outline, { x, y }: PointMm): boolean {
  let inside = false;
  for (let i = 0; i < outline.length; i += 1) {
    const [a, b] = [outline[i]!, outline[(i + 1) % outline.length]!];
    if (a.y > y !== b.y > y && x < a.x + ((y - a.y) / (b.y - a.y)) * (b.x - a.x)) inside = !inside;
  }
  return inside;
}
