import type { RectPx } from '../geometry/rectangle.ts';
import { listAlphaRuns } from '../raster/alpha-runs.ts';
import { joinRuns, type Runs, rootOf } from '../raster/connected-areas.ts';
import { wholeOf } from '../raster/pad.ts';
import type { Raster } from '../raster/raster.ts';

/** The parts of a picture that hang together by visible pixels (8-connected), in the order of their first pixels. */
export interface VisibleParts {
  readonly count: number;
  readonly runs: Runs;
  /** For each run the part that it belongs to. */
  readonly partOfRun: Int32Array;
  readonly pixels: Int32Array;
  /** Box of part i: from left, top to before right, bottom. */
  readonly left: Int32Array;
  readonly top: Int32Array;
  readonly right: Int32Array;
  readonly bottom: Int32Array;
}

const known = new WeakMap<Raster, VisibleParts>();

/**
 * The visible parts (alpha > 0 at the picture's own depth) of a raster, found once for each raster. Nothing visible
 * gives none, a picture without alpha one. Memory grows with the number of runs.
 */
export function findVisibleParts(raster: Raster): VisibleParts {
  let parts = known.get(raster);
  if (parts === undefined) {
    parts = sumUpParts(listAlphaRuns(raster, wholeOf(raster), { from: 1 }));
    known.set(raster, parts);
  }
  return parts;
}

/** The box of a part. */
export function boxOfPart({ left, top, right, bottom }: VisibleParts, part: number): RectPx {
  return {
    x: left[part]!,
    y: top[part]!,
    width: right[part]! - left[part]!,
    height: bottom[part]! - top[part]!,
  };
}

function sumUpParts(runs: Runs): VisibleParts {
  const parent = joinRuns(runs);
  const partOfRun = new Int32Array(runs.count);
  let count = 0;
  // A region's first run comes before its others, so its part is known when they are reached.
  for (let i = 0; i < runs.count; i += 1) {
    const root = rootOf(parent, i);
    partOfRun[i] = root === i ? count++ : partOfRun[root]!;
  }
  const pixels = new Int32Array(count);
  const left = new Int32Array(count).fill(2 ** 31 - 1);
  const top = new Int32Array(count).fill(-1);
  const right = new Int32Array(count);
  const bottom = new Int32Array(count);
  for (let i = 0; i < runs.count; i += 1) {
    const part = partOfRun[i]!;
    const [from, to] = [runs.from[i]!, runs.to[i]!];
    pixels[part]! += to - from;
    if (from < left[part]!) left[part] = from;
    if (to > right[part]!) right[part] = to;
    if (top[part] === -1) top[part] = runs.y[i]!;
    bottom[part] = runs.y[i]! + 1;
  }
  return { count, runs, partOfRun, pixels, left, top, right, bottom };
}
