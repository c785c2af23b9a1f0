import type { PointMm, RectMm } from './rectangle.ts';

/**
 * Closed outlines that are filled by the nonzero rule, in mm, x right and y down. Each contour begins with `M` and
 * ends with `Z`; `L` is a straight line, `Q` and `C` are quadratic and cubic Bézier curves (control points first).
 */
export type PathCommand =
  | readonly ['M' | 'L', number, number]
  | readonly ['Q', number, number, number, number]
  | readonly ['C', number, number, number, number, number, number]
  | readonly ['Z'];

export type Path = readonly PathCommand[];

/** The same outlines with every point, control points too, moved by a function that keeps lines straight. */
export function mapPath(path: Path, move: (point: PointMm) => PointMm): Path {
  const pair = (x: number, y: number): [number, number] => {
    const moved = move({ x, y });
    return [moved.x, moved.y];
  };
  return path.map((command): PathCommand => {
    switch (command[0]) {
      case 'Z':
        return command;
      case 'Q':
        return ['Q', ...pair(command[1], command[2]), ...pair(command[3], command[4])];
      case 'C':
        return [
          'C',
          ...pair(command[1], command[2]),
          ...pair(command[3], command[4]),
          ...pair(command[5], command[6]),
        ];
      default:
        return [command[0], ...pair(command[1], command[2])];
    }
  });
}

/** Box of all points, control points too: it holds the outlines. null for a path without points. */
export function findPathBounds(path: Path): RectMm | null {
  let [left, top, right, bottom] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const command of path)
    for (let i = 1; i < command.length; i += 2) {
      const [x, y] = [command[i] as number, command[i + 1] as number];
      if (x < left) left = x;
      if (x > right) right = x;
      if (y < top) top = y;
      if (y > bottom) bottom = y;
    }
  return left > right ? null : { x: left, y: top, width: right - left, height: bottom - top };
}
