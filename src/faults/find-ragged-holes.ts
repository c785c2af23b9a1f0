import { practiceLimit } from '../catalogue/practice.ts';
import type { RectPx } from '../geometry/rectangle.ts';
import { listAlphaRuns } from '../raster/alpha-runs.ts';
import { joinRuns, type Runs, rootOf } from '../raster/connected-areas.ts';
import { channelsOf, fullScaleOf, type Raster } from '../raster/raster.ts';

/** Alpha of 255 above which a pixel of a hole's rim is partly opaque, not faint. */
const RIM_LEAST = practiceLimit('haze-mean').value;
/** Of the rim's pixels: of a smooth edge next to none is lower or higher than all four beside it (own choice). */
const ROUGH_SHARE = 0.05;

/** A hole with the ragged, partly opaque rim of a bad cut-out. */
export interface RaggedHole {
  readonly boxPx: RectPx;
  readonly pixels: number;
}

/** What is known of a hole: its box, its pixels, those of them that are partly opaque, and of these the rough ones. */
interface Hole {
  left: number;
  top: number;
  right: number;
  bottom: number;
  pixels: number;
  partly: number;
  rough: number;
}

/**
 * Openings that art encloses (alpha under half, 8-connected, not reaching the rim of `boxPx`), at least `leastPx` wide
 * and high, whose rim is on the average a pixel or more of partial alpha and grainy along it. Clean cuts (rings, lace)
 * have a rim of half a pixel; soft ones rise evenly. Largest first; empty for pictures without alpha.
 */
export function findRaggedHoles(raster: Raster, boxPx: RectPx, leastPx: number): readonly RaggedHole[] {
  if (!raster.hasAlpha) return [];
  const readAlpha = alphaReader(raster, boxPx);
  const holes = listHoles(raster, boxPx, readAlpha);
  return holes
    .filter((hole) => isRagged(hole, boxPx, leastPx))
    .map(({ left, top, right, bottom, pixels }) => ({
      boxPx: { x: boxPx.x + left, y: boxPx.y + top, width: right - left, height: bottom - top },
      pixels,
    }))
    .sort((a, b) => b.pixels - a.pixels || a.boxPx.y - b.boxPx.y || a.boxPx.x - b.boxPx.x);
}

function isRagged(hole: Hole, { width, height }: RectPx, leastPx: number): boolean {
  const { left, top, right, bottom, partly, rough } = hole;
  const encloses = left > 0 && top > 0 && right < width && bottom < height;
  const large = right - left >= leastPx && bottom - top >= leastPx;
  // The rim of a convex hole is no longer than that of its box; a gap between leaves is longer than a square as large.
  const rim = 2 * (right - left + bottom - top);
  return encloses && large && partly >= rim && rough >= ROUGH_SHARE * partly;
}

/** Alpha of 255 at x, y of the box. */
function alphaReader({ data, widthPx, ...raster }: Raster, { x, y }: RectPx) {
  const step = channelsOf(raster);
  const scale = fullScaleOf(raster) / 255;
  return (column: number, row: number) => data[((y + row) * widthPx + x + column + 1) * step - 1]! / scale;
}

type AlphaReader = ReturnType<typeof alphaReader>;

function listHoles(raster: Raster, boxPx: RectPx, readAlpha: AlphaReader): Hole[] {
  const { width, height } = boxPx;
  const runs = listAlphaRuns(raster, boxPx, { below: fullScaleOf(raster) / 2 });
  const parent = joinRuns(runs);
  const outside = markOutside(runs, parent, width, height);
  const holes = new Map<number, Hole>();
  for (let i = 0; i < runs.count; i += 1) {
    const root = rootOf(parent, i);
    if (outside[root] === 1) continue;
    const [y, from, to] = [runs.y[i]!, runs.from[i]!, runs.to[i]!];
    const hole = holes.get(root) ?? {
      left: from,
      top: y,
      right: to,
      bottom: y + 1,
      pixels: 0,
      partly: 0,
      rough: 0,
    };
    holes.set(root, hole);
    hole.left = Math.min(hole.left, from);
    hole.right = Math.max(hole.right, to);
    hole.bottom = y + 1;
    hole.pixels += to - from;
    countRim(hole, y, from, to, readAlpha);
  }
  return [...holes.values()];
}

/** Marks, at their first runs, the regions that reach the rim of the box: they are no holes. */
function markOutside(runs: Runs, parent: Int32Array, width: number, height: number): Uint8Array {
  const outside = new Uint8Array(runs.count);
  for (let i = 0; i < runs.count; i += 1)
    if (runs.from[i] === 0 || runs.to[i] === width || runs.y[i] === 0 || runs.y[i] === height - 1)
      outside[rootOf(parent, i)] = 1;
  return outside;
}

/** Holes never reach the rim of the box, so that each of their pixels has four beside it. */
function countRim(hole: Hole, y: number, from: number, to: number, readAlpha: AlphaReader): void {
  for (let x = from; x < to; x += 1) {
    const alpha = readAlpha(x, y);
    if (alpha <= RIM_LEAST) continue;
    hole.partly += 1;
    const beside = [readAlpha(x - 1, y), readAlpha(x + 1, y), readAlpha(x, y - 1), readAlpha(x, y + 1)];
    if (beside.every((other) => other < alpha) || beside.every((other) => other > alpha)) hole.rough += 1;
  }
}
