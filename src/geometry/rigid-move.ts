import type { Drawing, DrawnItem } from './drawing.ts';
import { mapPath, type Path } from './path.ts';
import type { PointMm, RectMm } from './rectangle.ts';

/** Degrees clockwise, as seen on the page. */
export type QuarterTurn = 0 | 90 | 180 | 270;

/**
 * A move that keeps lengths and upright rectangles: first the mirroring left-right about the line x = 0, then the turn
 * about the origin, then the shift.
 */
export interface RigidMove {
  readonly mirrored?: boolean;
  readonly turn?: QuarterTurn;
  readonly by?: PointMm;
}

/** Where the x and the y axis point after a turn. Whole numbers, so that nothing is rounded on the way. */
const AXES: Readonly<Record<QuarterTurn, readonly [xx: number, xy: number, yx: number, yy: number]>> = {
  0: [1, 0, 0, 1],
  90: [0, 1, -1, 0],
  180: [-1, 0, 0, -1],
  270: [0, -1, 1, 0],
};

export function movePoint({ x, y }: PointMm, { mirrored = false, turn = 0, by }: RigidMove): PointMm {
  const [xx, xy, yx, yy] = AXES[turn];
  const from = mirrored ? -x : x;
  return { x: from * xx + y * yx + (by?.x ?? 0), y: from * xy + y * yy + (by?.y ?? 0) };
}

export function moveRect({ x, y, width, height }: RectMm, move: RigidMove): RectMm {
  const one = movePoint({ x, y }, move);
  const other = movePoint({ x: x + width, y: y + height }, move);
  const lying = move.turn === 90 || move.turn === 270;
  return {
    x: Math.min(one.x, other.x),
    y: Math.min(one.y, other.y),
    width: lying ? height : width,
    height: lying ? width : height,
  };
}

/** Mirroring turns every contour the other way round: by the nonzero rule the same area stays filled. */
export function movePath(path: Path, move: RigidMove): Path {
  return mapPath(path, (point) => movePoint(point, move));
}

export function moveDrawing(drawing: Drawing, move: RigidMove): Drawing {
  return drawing.map((item): DrawnItem => {
    if (item.kind === 'line')
      return { ...item, from: movePoint(item.from, move), to: movePoint(item.to, move) };
    if (item.kind === 'rect') return { ...item, rectMm: moveRect(item.rectMm, move) };
    return { ...item, path: movePath(item.path, move) };
  });
}
