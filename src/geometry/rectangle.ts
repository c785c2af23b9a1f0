/** Rectangles are half-open: `x` and `y` belong to them, `x + width` and `y + height` do not. x right, y down. */
export interface RectPx {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** The same in millimetres; the origin is named where the value stands. */
export interface RectMm {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

export interface PointPx {
  readonly x: number;
  readonly y: number;
}

export interface PointMm {
  readonly x: number;
  readonly y: number;
}

/** Smallest rectangle that holds all points; null for none. */
export function findBounds(points: readonly { readonly x: number; readonly y: number }[]): RectMm | null {
  if (points.length === 0) return null;
  let left = Infinity;
  let top = Infinity;
  let right = -Infinity;
  let bottom = -Infinity;
  for (const { x, y } of points) {
    left = Math.min(left, x);
    right = Math.max(right, x);
    top = Math.min(top, y);
    bottom = Math.max(bottom, y);
  }
  return { x: left, y: top, width: right - left, height: bottom - top };
}

/** The middle of a rectangle. */
export function middleOf(rect: RectMm): PointMm {
  return { x: rect.x + rect.width / 2, y: rect.y + rect.height / 2 };
}

/** A rectangle with `marginMm` more on every side (less, where it is negative). */
export function growBox(box: RectMm, marginMm: number): RectMm {
  return {
    x: box.x - marginMm,
    y: box.y - marginMm,
    width: box.width + 2 * marginMm,
    height: box.height + 2 * marginMm,
  };
}
