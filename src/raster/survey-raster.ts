import { findConvexHull } from '../geometry/convex-hull.ts';
import type { PointPx, RectPx } from '../geometry/rectangle.ts';
import { createPixelCounts, type PixelCounts, type RowCounter, rowCounterFor } from './count-pixels.ts';
import { fullScaleOf, type Raster } from './raster.ts';
import { inkFinderFor, spanFinderFor } from './row-span.ts';
import type { Survey } from './survey.ts';

/** Alpha shares at which boxes are measured besides "visible"; what a box at each is for: survey.ts. */
const ALPHA_SHARES = [0.02, 0.1, 0.5] as const;

/**
 * Measures a gray or rgb picture in one pass: content box and hull of the visible pixels, alpha histogram,
 * colour census, borders. Nothing visible gives null boxes and an empty hull. Does not change the raster.
 */
export function surveyRaster(raster: Raster): Survey {
  const { widthPx, heightPx } = raster;
  const counts = createPixelCounts();
  const countRow = rowCounterFor(raster);
  const edges = raster.hasAlpha ? walkRows(raster, counts, countRow) : takeAll(raster, counts, countRow);
  const [visible, percent2, percent10, percent50] = edges.boxes.map((bounds) => bounds.toRect());
  if (!raster.hasAlpha) counts.alphaHistogram[255] = widthPx * heightPx;
  else counts.alphaHistogram[0] = widthPx * heightPx - counts.visiblePixels;
  return {
    widthPx,
    heightPx,
    contentBoxPx: visible!,
    inkBoxPx: edges.ink.toRect(),
    boxAtAlphaPx: { percent2: percent2!, percent10: percent10!, percent50: percent50! },
    hullPx: findConvexHull(edges.corners),
    visiblePixels: counts.visiblePixels,
    alphaHistogram: counts.alphaHistogram,
    census: counts.census,
    pureWhitePixels: counts.pureWhitePixels,
    borderPixels: edges.borderPixels,
  };
}

interface Edges {
  readonly boxes: readonly Bounds[];
  readonly ink: Bounds;
  readonly corners: PointPx[];
  readonly borderPixels: Survey['borderPixels'];
}

function takeAll(raster: Raster, counts: PixelCounts, countRow: RowCounter): Edges {
  const { widthPx, heightPx } = raster;
  const findInk = inkFinderFor(raster);
  const ink = createBounds();
  for (let y = 0; y < heightPx; y += 1) {
    countRow(counts, y * widthPx, (y + 1) * widthPx);
    const inked = { first: 0, last: widthPx - 1 };
    if (findInk(y * widthPx, inked)) ink.add(inked.first, inked.last, y);
  }
  const whole = createBounds();
  whole.add(0, widthPx - 1, 0);
  whole.add(0, widthPx - 1, heightPx - 1);
  return {
    boxes: [whole, whole, whole, whole],
    ink,
    corners: [0, heightPx].flatMap((y) => [
      { x: 0, y },
      { x: widthPx, y },
    ]),
    borderPixels: { top: widthPx, bottom: widthPx, left: heightPx, right: heightPx },
  };
}

function walkRows(raster: Raster, counts: PixelCounts, countRow: RowCounter): Edges {
  const { widthPx, heightPx } = raster;
  const thresholds = [1, ...ALPHA_SHARES.map((share) => Math.ceil(share * fullScaleOf(raster)))];
  const findSpan = spanFinderFor(raster);
  const findInk = inkFinderFor(raster);
  const ink = createBounds();
  const boxes = thresholds.map(createBounds);
  const corners: PointPx[] = [];
  const border = { top: 0, right: 0, bottom: 0, left: 0 };
  for (let y = 0; y < heightPx; y += 1) {
    const row = y * widthPx;
    const span = { first: 0, last: widthPx - 1 };
    for (let t = 0; t < thresholds.length && findSpan(row, span, thresholds[t]!); t += 1) {
      boxes[t]!.add(span.first, span.last, y);
      if (t > 0) continue;
      const { first, last } = span;
      const inked = { first, last };
      if (findInk(row, inked)) ink.add(inked.first, inked.last, y);
      corners.push({ x: first, y }, { x: first, y: y + 1 }, { x: last + 1, y }, { x: last + 1, y: y + 1 });
      const before = counts.visiblePixels;
      countRow(counts, row + first, row + last + 1);
      if (first === 0) border.left += 1;
      if (last === widthPx - 1) border.right += 1;
      if (y === 0) border.top = counts.visiblePixels - before;
      if (y === heightPx - 1) border.bottom = counts.visiblePixels - before;
    }
  }
  return { boxes, ink, corners, borderPixels: border };
}

interface Bounds {
  /** Takes in the pixels first…last of row y; rows come in order. */
  add(first: number, last: number, y: number): void;
  toRect(): RectPx | null;
}

function createBounds(): Bounds {
  let left = Infinity;
  let right = -1;
  let top = -1;
  let bottom = -1;
  return {
    add(first, last, y) {
      if (first < left) left = first;
      if (last > right) right = last;
      if (top < 0) top = y;
      bottom = y;
    },
    toRect: () => (top < 0 ? null : { x: left, y: top, width: right - left + 1, height: bottom - top + 1 }),
  };
}
