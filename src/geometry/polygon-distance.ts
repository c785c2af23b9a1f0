type Points = readonly (readonly [number, number])[];

/** Signed distance (positive inside, even-odd rule) of a point to a closed polygon, in the polygon's unit. */
export function distanceInsidePolygon(points: Points, x: number, y: number): number {
  let nearest = Infinity;
  let inside = false;
  for (let i = 0, j = points.length - 1; i < points.length; j = i, i += 1) {
    const [ax, ay] = points[j]!;
    const [bx, by] = points[i]!;
    nearest = Math.min(nearest, distanceToSegment(x, y, ax, ay, bx, by));
    if (ay > y !== by > y && x < ((bx - ax) * (y - ay)) / (by - ay) + ax) inside = !inside;
  }
  return inside ? nearest : -nearest;
}

function distanceToSegment(x: number, y: number, ax: number, ay: number, bx: number, by: number): number {
  const dx = bx - ax;
  const dy = by - ay;
  const lengthSquared = dx * dx + dy * dy;
  const along = lengthSquared === 0 ? 0 : ((x - ax) * dx + (y - ay) * dy) / lengthSquared;
  const t = Math.min(1, Math.max(0, along));
  return Math.hypot(x - ax - t * dx, y - ay - t * dy);
}

/** Twice the signed area; positive when the points run clockwise as seen on the screen (y down). */
export function doubleAreaOf(points: Points): number {
  let sum = 0;
  for (let i = 0, j = points.length - 1; i < points.length; j = i, i += 1) {
    sum += points[j]![0] * points[i]![1] - points[i]![0] * points[j]![1];
  }
  return sum;
}

/** True when no corner of the polygon points inward. Straight corners count as convex. */
export function isConvexPolygon(points: Points): boolean {
  const turn = Math.sign(doubleAreaOf(points));
  return points.every(([bx, by], i) => {
    const [ax, ay] = points[(i + points.length - 1) % points.length]!;
    const [cx, cy] = points[(i + 1) % points.length]!;
    return turn * ((bx - ax) * (cy - by) - (by - ay) * (cx - bx)) >= -1e-9 * Math.abs(doubleAreaOf(points));
  });
}
