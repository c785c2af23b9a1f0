import type { RectPx } from '../geometry/rectangle.ts';
import { channelsOf, fullScaleOf, type Raster } from '../raster/raster.ts';
import { isNear, listDesignRows } from './design-rows.ts';
import { boxOfPart, findVisibleParts, type VisibleParts } from './visible-parts.ts';

export interface StrayLimits {
  /** Specks are no longer than this on either side, px. */
  readonly sizePx: number;
  /** And at least so far from every part of the design, px. */
  readonly distancePx: number;
  /** Solid specks at least this long count as a pattern where there are several: confetti, snow, stars. px */
  readonly patternPx: number;
}

export interface Stray {
  readonly boxPx: RectPx;
  readonly pixels: number;
}

export interface Strays {
  /** Largest first, then from the top left. */
  readonly strays: readonly Stray[];
  /** Box of all that is visible without them. */
  readonly keptBoxPx: RectPx;
  /** Visits their pixels, run by run. */
  readonly visitRuns: (visit: (y: number, from: number, to: number) => void) => void;
}

/** So many solid specks are a pattern, not leftovers (own choice). */
const PATTERN_COUNT = 4;

/**
 * The specks away from the design; null where there are none, and where all is specks: a dotted pattern has no design
 * to stray from. Distances are from a speck's box to the nearest pixel of the design, Euclidean.
 */
export function findStrays(raster: Raster, limits: StrayLimits): Strays | null {
  if (!raster.hasAlpha) return null;
  const parts = findVisibleParts(raster);
  if (parts.count < 2) return null;
  const small = markSmall(parts, limits.sizePx);
  const design = listDesignRows(parts, small, raster.heightPx);
  if (design.from.length === 0) return null;
  const far = small.map((yes, part) =>
    yes === 1 && !isNear(parts, part, design, limits.distancePx) ? 1 : 0,
  );
  spare(far, parts, raster, limits.patternPx);
  const found: number[] = [];
  for (let part = far.indexOf(1); part !== -1; part = far.indexOf(1, part + 1)) found.push(part);
  if (found.length === 0) return null;
  const strays = found.map((part) => ({ boxPx: boxOfPart(parts, part), pixels: parts.pixels[part]! }));
  strays.sort((a, b) => b.pixels - a.pixels || a.boxPx.y - b.boxPx.y || a.boxPx.x - b.boxPx.x);
  return { strays, keptBoxPx: boxOfOthers(parts, far), visitRuns: (visit) => visitMarked(parts, far, visit) };
}

function markSmall({ count, left, right, top, bottom }: VisibleParts, sizePx: number): Uint8Array {
  const small = new Uint8Array(count);
  for (let i = 0; i < count; i += 1)
    if (right[i]! - left[i]! <= sizePx && bottom[i]! - top[i]! <= sizePx) small[i] = 1;
  return small;
}

/** Takes out the solid specks of some size where they are several. */
function spare(far: Uint8Array, parts: VisibleParts, raster: Raster, patternPx: number): void {
  const solid = new Uint8Array(far.length);
  const step = channelsOf(raster);
  const half = fullScaleOf(raster) / 2;
  visitMarked(parts, far, (y, from, to, part) => {
    for (let x = from; x < to && solid[part] === 0; x += 1)
      if (raster.data[(y * raster.widthPx + x) * step + step - 1]! > half) solid[part] = 1;
  });
  let count = 0;
  const sized = far.map((yes, i) => {
    const longest = Math.max(parts.right[i]! - parts.left[i]!, parts.bottom[i]! - parts.top[i]!);
    const one = yes === 1 && solid[i] === 1 && longest >= patternPx ? 1 : 0;
    count += one;
    return one;
  });
  if (count >= PATTERN_COUNT) for (let i = 0; i < far.length; i += 1) if (sized[i] === 1) far[i] = 0;
}

function visitMarked(
  { runs, partOfRun }: VisibleParts,
  marked: Uint8Array,
  visit: (y: number, from: number, to: number, part: number) => void,
): void {
  for (let i = 0; i < runs.count; i += 1)
    if (marked[partOfRun[i]!] === 1) visit(runs.y[i]!, runs.from[i]!, runs.to[i]!, partOfRun[i]!);
}

function boxOfOthers({ count, left, top, right, bottom }: VisibleParts, marked: Uint8Array): RectPx {
  let [x, y, endX, endY] = [Infinity, Infinity, 0, 0];
  for (let i = 0; i < count; i += 1) {
    if (marked[i] === 1) continue;
    x = Math.min(x, left[i]!);
    y = Math.min(y, top[i]!);
    endX = Math.max(endX, right[i]!);
    endY = Math.max(endY, bottom[i]!);
  }
  return { x, y, width: endX - x, height: endY - y };
}
