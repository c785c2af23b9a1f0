import { findConvexHull } from '../geometry/convex-hull.ts';
import type { PointPx, RectPx } from '../geometry/rectangle.ts';
import { fullScaleOf, type Raster } from './raster.ts';
import { narrowToAlpha, narrowToInk, type RowPixels, type RowSpan, rowPixelsOf } from './row-span.ts';
import type { Extents } from './survey.ts';

/** Alpha shares at which boxes are measured besides "visible". */
const ALPHA_SHARES = [0.02, 0.1, 0.5] as const;

/**
 * Boxes and hull of a gray or rgb picture: all that placing it needs, at a fraction of the cost of counting its
 * pixels. Nothing visible gives null boxes and an empty hull. Does not change the raster.
 */
export function findExtents(raster: Raster): Extents {
  const { widthPx, heightPx } = raster;
  const thresholds = raster.hasAlpha
    ? [1, ...ALPHA_SHARES.map((share) => Math.ceil(share * fullScaleOf(raster)))]
    : [0, 0, 0, 0];
  const pixels = rowPixelsOf(raster);
  const ink = new Bounds();
  const boxes = thresholds.map(() => new Bounds());
  const corners: PointPx[] = [];
  const rowSpansPx = new Int32Array(2 * heightPx).fill(-1);
  for (let y = 0; y < heightPx; y += 1) {
    const row = y * widthPx;
    const span = { first: 0, last: widthPx - 1 };
    for (let t = 0; t < thresholds.length && narrowToLeast(pixels, row, span, thresholds[t]!); t += 1) {
      boxes[t]!.add(span.first, span.last, y);
      if (t > 0) continue;
      const { first, last } = span;
      rowSpansPx[2 * y] = first;
      rowSpansPx[2 * y + 1] = last;
      const inked = { first, last };
      if (narrowToInk(pixels, row, inked)) ink.add(inked.first, inked.last, y);
      corners.push({ x: first, y }, { x: first, y: y + 1 }, { x: last + 1, y }, { x: last + 1, y: y + 1 });
    }
    if (rowSpansPx[2 * y] === -1) rowSpansPx[2 * y] = 0;
  }
  const [visible, percent2, percent10, percent50] = boxes.map((bounds) => bounds.toRect());
  return {
    widthPx,
    heightPx,
    contentBoxPx: visible!,
    boxAtAlphaPx: { percent2: percent2!, percent10: percent10!, percent50: percent50! },
    inkBoxPx: ink.toRect(),
    hullPx: findConvexHull(corners),
    rowSpansPx,
  };
}

/** All of a picture without alpha is opaque. */
function narrowToLeast(pixels: RowPixels, row: number, span: RowSpan, least: number): boolean {
  return !pixels.hasAlpha || narrowToAlpha(pixels, row, span, least);
}

class Bounds {
  #left = Infinity;
  #right = -1;
  #top = -1;
  #bottom = -1;

  /** Takes in the pixels first…last of row y; rows come in order. */
  add(first: number, last: number, y: number): void {
    if (first < this.#left) this.#left = first;
    if (last > this.#right) this.#right = last;
    if (this.#top < 0) this.#top = y;
    this.#bottom = y;
  }

  toRect(): RectPx | null {
    if (this.#top < 0) return null;
    return {
      x: this.#left,
      y: this.#top,
      width: this.#right - this.#left + 1,
      height: this.#bottom - this.#top + 1,
    };
  }
}
