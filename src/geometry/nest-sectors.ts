import type { Sector } from './sector.ts';

/**
 * How far apart along their axis equal sectors lie so that no two come nearer to each other than the gap: the least distance
 * from which on that holds, mm. Never more than the height of their box and the gap; as much where there is no inner radius.
 *
 * Derived. Apex at the origin, axis up, radii R > r, half angle h; the other sector lies d higher. In the column x no point
 * within the gap g of the lower one is higher than sqrt((R + g)^2 - x^2): no such point lies beyond R + g of the apex, and
 * for |x| <= R sin h (for all |x| <= R where h is beyond 90 degrees) that height is one straight out from the outer arc.
 * The lower rim of the upper one in that column is d + l(x), where l is
 *   sqrt(r^2 - x^2)   for |x| <= r sin h and h up to 90 degrees: the inner arc,
 *   |x| cot h         for |x| from r sin h to R sin h: the straight side,
 *   -sqrt(R^2 - x^2)  for |x| beyond that, which there is only where h is beyond 90 degrees: the ends of the outer arc.
 * So they are clear from d = max over x of f(x) = sqrt((R + g)^2 - x^2) - l(x) on. Along the inner arc f grows with |x|,
 * along the ends of the outer arc it falls. Along the side it grows up to |x| = -(R + g) cos h and falls from there: its
 * derivative is -x / sqrt((R + g)^2 - x^2) - cot h. Up to 90 degrees the most is therefore at the inner corner, |x| = r sin h:
 *   d = sqrt((R + g)^2 - r^2 sin^2 h) - r cos h,
 * and beyond, where the legs of the upper one stand on the outer arc of the lower one, at that place kept to the side.
 */
export function findNestingPitch({ outerRadiusMm, innerRadiusMm, angleRad }: Sector, gapMm: number): number {
  const [sin, cos] = [Math.sin(angleRad / 2), Math.cos(angleRad / 2)];
  const reachMm = outerRadiusMm + gapMm;
  const x = Math.min(outerRadiusMm * sin, Math.max(innerRadiusMm * sin, -reachMm * cos));
  return Math.sqrt(reachMm * reachMm - x * x) - (x * cos) / sin;
}
