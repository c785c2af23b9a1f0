type Point = readonly [number, number];

/** Nominal points are written to a hundredth of a millimetre; boxes must agree with them to a twentieth. */
const AGREEMENT_MM = 0.05;

/** What keeps a list of points from being an outline of the given box, in words; null when nothing does. */
export function findPolygonFault(points: readonly Point[], widthMm: number, heightMm: number): string | null {
  const distinct = new Set(points.map(([x, y]) => `${x},${y}`));
  if (distinct.size < 3) return `${distinct.size} distinct points`;
  const corners = withoutRepeats(points);
  if (distinct.size < corners.length) return 'an outline that touches itself at a corner';
  const xs = corners.map(([x]) => x);
  const ys = corners.map(([, y]) => y);
  const box = [Math.min(...xs), Math.min(...ys), Math.max(...xs), Math.max(...ys)];
  const wanted = [0, 0, widthMm, heightMm];
  if (box.some((value, i) => Math.abs(value - wanted[i]!) > AGREEMENT_MM)) {
    return `points from ${box[0]}, ${box[1]} to ${box[2]}, ${box[3]}`;
  }
  const crossing = findCrossing(corners);
  return crossing ? `sides ${crossing[0] + 1} and ${crossing[1] + 1} that cross or touch` : null;
}

/** Points that repeat the one before (the last repeats the first where the outline is closed by hand) add no side. */
function withoutRepeats(points: readonly Point[]): readonly Point[] {
  return points.filter(([x, y], i) => {
    const [lastX, lastY] = points[(i + points.length - 1) % points.length]!;
    return x !== lastX || y !== lastY;
  });
}

/** The first two sides that meet elsewhere than at a shared corner, or neighbours that fold back on each other. */
function findCrossing(points: readonly Point[]): readonly [number, number] | null {
  const count = points.length;
  for (let i = 0; i < count; i += 1) {
    const a = points[i]!;
    const b = points[(i + 1) % count]!;
    for (let j = i + 1; j < count; j += 1) {
      const c = points[j]!;
      const d = points[(j + 1) % count]!;
      const neighbours = j === i + 1 || (i === 0 && j === count - 1);
      if (neighbours ? foldsBack(i === 0 && j === count - 1 ? [c, a, b] : [a, b, d]) : meet(a, b, c, d)) {
        return [i, j];
      }
    }
  }
  return null;
}

function foldsBack([from, corner, to]: readonly [Point, Point, Point]): boolean {
  const along = (from[0] - corner[0]) * (to[0] - corner[0]) + (from[1] - corner[1]) * (to[1] - corner[1]);
  return sideOf(from, corner, to) === 0 && along > 0;
}

/** -1, 0 or 1: on which side of the line from a to b the point lies. */
function sideOf(a: Point, b: Point, point: Point): number {
  return Math.sign((b[0] - a[0]) * (point[1] - a[1]) - (b[1] - a[1]) * (point[0] - a[0]));
}

/** Crossing, or one beginning on the other; where one ends, the next side begins, so ends need no look of their own. */
function meet(a: Point, b: Point, c: Point, d: Point): boolean {
  const [ac, ad, ca, cb] = [sideOf(a, b, c), sideOf(a, b, d), sideOf(c, d, a), sideOf(c, d, b)];
  if (ac * ad < 0 && ca * cb < 0) return true;
  return (ac === 0 && within(a, b, c)) || (ca === 0 && within(c, d, a));
}

/** For a point on the line: whether it lies between the ends. */
function within(a: Point, b: Point, point: Point): boolean {
  return [0, 1].every(
    (axis) => Math.min(a[axis]!, b[axis]!) <= point[axis]! && point[axis]! <= Math.max(a[axis]!, b[axis]!),
  );
}
