/**
 * Signed distance (positive inside) of a point in the first quadrant to an axis-parallel ellipse around
 * the origin. The foot point is found by bisection on the one root of the distance equation, which always
 * converges, unlike Newton steps near the axes.
 * @see D. Eberly, "Distance from a Point to an Ellipse, an Ellipsoid, or a Hyperellipsoid", Geometric Tools.
 */
export function distanceInsideEllipse(x: number, y: number, halfWidth: number, halfHeight: number): number {
  if (halfWidth < halfHeight) return distanceInsideEllipse(y, x, halfHeight, halfWidth);
  const inside = (x / halfWidth) ** 2 + (y / halfHeight) ** 2 <= 1;
  const distance = distanceToQuadrant(x, y, halfWidth, halfHeight);
  return inside ? distance : -distance;
}

/** `a` >= `b` > 0, x and y >= 0. */
function distanceToQuadrant(x: number, y: number, a: number, b: number): number {
  if (y > 0) {
    if (x === 0) return Math.abs(y - b);
    const z0 = x / a;
    const z1 = y / b;
    const g = z0 * z0 + z1 * z1 - 1;
    if (g === 0) return 0;
    const r0 = (a / b) ** 2;
    const root = findRoot(r0, z0, z1, g);
    return Math.hypot((r0 * x) / (root + r0) - x, y / (root + 1) - y);
  }
  const numerator = a * x;
  const denominator = a * a - b * b;
  if (numerator < denominator) {
    // Between the centres of curvature on the long axis the nearest point is off the axis.
    const ratio = numerator / denominator;
    return Math.hypot(a * ratio - x, b * Math.sqrt(1 - ratio * ratio));
  }
  return Math.abs(x - a);
}

function findRoot(r0: number, z0: number, z1: number, g: number): number {
  const n0 = r0 * z0;
  let low = z1 - 1;
  let high = g < 0 ? 0 : Math.hypot(n0, z1) - 1;
  let root = 0;
  // Doubles are exhausted well before this; the loop ends when the middle no longer moves.
  for (let i = 0; i < 1074; i += 1) {
    root = (low + high) / 2;
    if (root === low || root === high) break;
    const ratio0 = n0 / (root + r0);
    const ratio1 = z1 / (root + 1);
    const value = ratio0 * ratio0 + ratio1 * ratio1 - 1;
    if (value > 0) low = root;
    else if (value < 0) high = root;
    else break;
  }
  return root;
}
