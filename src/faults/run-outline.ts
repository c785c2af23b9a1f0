import type { SideView } from '../raster/canvas-side.ts';

/** An end of a run along the canvas, and the direction along the side that leads out of the run. */
export interface EndOfRun {
  readonly at: number;
  readonly outward: -1 | 1;
}

/** Half of 255: an outline lies where alpha passes it. */
const HALF = 127.5;
/** The tangent of 10 degrees: nearer to a right angle is straight (own choice). */
const STRAIGHT = 0.18;
/**
 * Share of its way over the whole depth that an outline has gone at a quarter of it. A straight one 1/4; a rounding that
 * begins at the canvas about sqrt(1/4), less what the first pixel hides (derived: (sqrt 3.5 - sqrt 0.5) / (sqrt 12.5 -
 * sqrt 0.5) = 0.41). The limit lies between the two.
 */
const TOUCHING = 0.36;

/**
 * How far the outline moves outwards over `depth` pixels from the canvas, in pixels (negative where the art narrows
 * inwards), where it meets the canvas aslant; null where it meets it at about a right angle, only touches it, or cannot
 * be followed.
 */
export function leansAt(view: SideView, end: EndOfRun, depth: number): number | null {
  const [start, quarter, whole] = [0, depth / 4, depth].map((d) => outlineAt(view, end, Math.round(d)));
  if (start == null || quarter == null || whole == null) return null;
  const gone = (whole - start) * end.outward;
  if (Math.abs(gone) < STRAIGHT * depth) return null;
  return ((quarter - start) * end.outward) / gone > TOUCHING ? null : gone;
}

/** Width between the two outlines of a run at this depth, px; 0 where one cannot be followed. */
export function widthAt(view: SideView, ends: readonly EndOfRun[], depth: number): number {
  const [left, right] = ends.map((end) => outlineAt(view, end, depth));
  return left == null || right == null ? 0 : right - left;
}

/**
 * The height, px, by which a run of two ends would go on beyond the canvas: by the squares of its widths, which for an
 * arc grow evenly with the depth. Exact for a parabola; too low for a point.
 */
export function missingPx(view: SideView, ends: readonly EndOfRun[], depth: number): number {
  const [atCanvas, inside] = [widthAt(view, ends, 0) ** 2, widthAt(view, ends, depth) ** 2];
  return inside <= atCanvas ? Infinity : (atCanvas * depth) / (inside - atCanvas);
}

/** Where alpha passes a half, px along the side with parts of a pixel, following the outline inwards; null at a corner. */
function outlineAt({ alphaAt, lengthPx }: SideView, { at, outward }: EndOfRun, depth: number): number | null {
  let i = at;
  for (let d = 0; d <= depth; d += 1) {
    const isIn = (k: number) => alphaAt(k, d) >= HALF;
    while (i >= 0 && i < lengthPx && !isIn(i)) i -= outward;
    while (i >= 0 && i < lengthPx && isIn(i)) i += outward;
    // Now the first pixel outside.
    if (i < 0 || i >= lengthPx || i - outward < 0 || i - outward >= lengthPx) return null;
    if (d === depth) {
      const [inside, outside] = [alphaAt(i - outward, d), alphaAt(i, d)];
      return i - outward + (outward * (inside - HALF)) / Math.max(1e-9, inside - outside);
    }
    i -= outward;
  }
  return null;
}
