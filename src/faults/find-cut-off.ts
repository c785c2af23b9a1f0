import type { RectPx } from '../geometry/rectangle.ts';
import { CANVAS_SIDES, type CanvasSide, type SideView, viewSide } from '../raster/canvas-side.ts';
import type { Raster } from '../raster/raster.ts';
import { type EndOfRun, leansAt, missingPx, widthAt } from './run-outline.ts';

/** A straight end that the canvas made. */
export interface CutOff {
  readonly side: CanvasSide;
  /** `glow`: what fades is cut before it has faded. `shape`: an outline meets the canvas aslant, and would go on. */
  readonly what: 'glow' | 'shape';
  /** The pixels along the canvas in which it lies, one deep. */
  readonly boxPx: RectPx;
}

export interface CutOffLimits {
  /** Length of an end that shows, px along a side. */
  readonly lengthPx: (side: CanvasSide) => number;
  /** Height that must be missing, px across a side. */
  readonly missingPx: (side: CanvasSide) => number;
  /** The box of what is visible. */
  readonly boxPx: RectPx;
}

/** Fainter than this an end is not seen (alpha of 255, own choice). */
const LEAST_ALPHA = 20;
/** Denser than this does not fade (alpha of 255, own choice). */
const MOST_FADING = 235;
/**
 * What fades gains at least so much over the depth looked at, and at most so much from pixel to pixel (of 255); the first
 * pixels do not count, since an edge that lies across them is no glow (own choice).
 */
const FADES = { gain: 8, step: 48, edgePx: 2 } as const;
/** A side that is filled over more of its length is where art was meant to end (own choice). */
const FILLED = 0.9;
/** Gaps within a run: grain and thin lines of the canvas (own choice). */
const GAP_PX = 2;
/** An outline is looked at over this depth at least: less shows no direction (own choice). */
const LEAST_DEPTH_PX = 12;

/**
 * Where the canvas cuts art off, longest first; at most one of each side. A glow is cut wherever it ends half faded.
 * Of what is dense, only an outline that meets the canvas aslant tells a cut: a straight or rounded end is meant, and so
 * is all of what touches the canvas on every side, as trimmed art does. Empty for opaque pictures and inks.
 */
export function findCutOffs(raster: Raster, limits: CutOffLimits): readonly CutOff[] {
  if (!raster.hasAlpha || raster.model === 'cmyk') return [];
  const isTrimmed = CANVAS_SIDES.every(
    (side) => marginPx(raster, limits.boxPx, side) <= limits.missingPx(side),
  );
  return CANVAS_SIDES.flatMap((side) => {
    const view = viewSide(raster, side);
    const found = listRuns(view)
      .filter(({ to, from }) => to - from >= limits.lengthPx(side))
      .map((run) => ({ run, what: judgeRun(view, run, limits, isTrimmed) }))
      .filter(({ what }) => what !== null)
      .sort((a, b) => b.run.to - b.run.from - (a.run.to - a.run.from));
    return found.slice(0, 1).map(({ run, what }) => ({ side, what: what!, boxPx: boxOf(raster, side, run) }));
  }).sort((a, b) => lengthOf(b) - lengthOf(a));
}

const lengthOf = ({ boxPx }: CutOff) => Math.max(boxPx.width, boxPx.height);

/** Pixels along a side that the art meets, half-open. */
interface Run {
  readonly from: number;
  readonly to: number;
}

function listRuns({ lengthPx, alphaAt }: SideView): readonly Run[] {
  const runs: { from: number; to: number }[] = [];
  for (let i = 0; i < lengthPx; i += 1) {
    if (alphaAt(i, 0) < LEAST_ALPHA) continue;
    const last = runs.at(-1);
    if (last && i - last.to <= GAP_PX) last.to = i + 1;
    else runs.push({ from: i, to: i + 1 });
  }
  return runs;
}

function judgeRun(view: SideView, run: Run, limits: CutOffLimits, isTrimmed: boolean): CutOff['what'] | null {
  const { side, lengthPx } = view;
  const depth = Math.round(Math.max(LEAST_DEPTH_PX, 2 * limits.missingPx(side)));
  if (2 * depth > view.depthPx) return null;
  if (countFading(view, run, depth) >= limits.lengthPx(side)) return 'glow';
  if (isTrimmed || run.to - run.from > FILLED * lengthPx) return null;
  const ends: readonly EndOfRun[] = [
    ...(run.from > 0 ? [{ at: run.from, outward: -1 } as const] : []),
    ...(run.to < lengthPx ? [{ at: run.to - 1, outward: 1 } as const] : []),
  ];
  const leans = ends.map((end) => leansAt(view, end, depth));
  if (leans.every((lean) => lean === null)) return null;
  // What grows towards the canvas would go on for ever; what narrows may lack too little to be missed.
  const narrows = ends.length === 2 && widthAt(view, ends, depth) > widthAt(view, ends, 0);
  return narrows && missingPx(view, ends, depth) < limits.missingPx(side) ? null : 'shape';
}

/** Pixels of a run from which alpha grows inwards as a glow's does. */
function countFading({ alphaAt }: SideView, { from, to }: Run, depth: number): number {
  let count = 0;
  for (let i = from; i < to; i += 1) {
    const first = alphaAt(i, 0);
    if (
      first < LEAST_ALPHA ||
      first > MOST_FADING ||
      alphaAt(i, depth) - alphaAt(i, FADES.edgePx) < FADES.gain
    )
      continue;
    let steepest = 0;
    for (let d = 0; d < depth; d += 1)
      steepest = Math.max(steepest, Math.abs(alphaAt(i, d + 1) - alphaAt(i, d)));
    if (steepest <= FADES.step) count += 1;
  }
  return count;
}

function marginPx({ widthPx, heightPx }: Raster, { x, y, width, height }: RectPx, side: CanvasSide): number {
  return { top: y, left: x, right: widthPx - x - width, bottom: heightPx - y - height }[side];
}

function boxOf({ widthPx, heightPx }: Raster, side: CanvasSide, { from, to }: Run): RectPx {
  if (side === 'top' || side === 'bottom')
    return { x: from, y: side === 'top' ? 0 : heightPx - 1, width: to - from, height: 1 };
  return { x: side === 'left' ? 0 : widthPx - 1, y: from, width: 1, height: to - from };
}
