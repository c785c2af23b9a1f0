import { practiceLimit } from '../catalogue/practice.ts';
import type { EdgePoint } from '../geometry/edge-walk.ts';
import { walkEdge } from '../geometry/edge-walk.ts';
import { MM_PER_INCH } from '../geometry/length.ts';
import type { PointMm, PointPx, RectPx } from '../geometry/rectangle.ts';
import { type ArtFrame, frameOf } from '../job/art-frame.ts';
import type { Job } from '../job/job.ts';
import { TOUCH_MM } from '../job/lines.ts';
import { type ArtTest, makeArtTest } from '../raster/art-test.ts';
import type { Raster } from '../raster/raster.ts';
import { findRaySpans } from '../raster/ray-spans.ts';
import { type Side, sideOf } from './sides.ts';

/** Longest step of the walk along the edge; gaps across it narrower than this are closed too. */
const LONGEST_STEP_MM = practiceLimit('bleed-step').value;

/** What the art does along one normal of the edge. */
export interface EdgeReading {
  readonly point: EdgePoint;
  readonly side: Side;
  /** mm beyond the edge to which art that reaches the edge goes on, at most the bleed; null where none reaches it. */
  readonly reachMm: number | null;
  /** mm between the edge and the end of art that stops within the safe ring; null where none does. */
  readonly clearanceMm: number | null;
}

const profiles = new WeakMap<Raster, WeakMap<Job, readonly EdgeReading[]>>();

/**
 * One reading per point of the walk along the edge: solid art (alpha of at least 50 %, white on a white base
 * left out) followed along the outward normal from the safe line to the bleed line. Measured once per raster and
 * job, and kept as long as they are: two checks read it.
 */
export function readEdge(job: Job, raster: Raster): readonly EdgeReading[] {
  const ofRaster = profiles.get(raster) ?? new WeakMap<Job, readonly EdgeReading[]>();
  profiles.set(raster, ofRaster);
  const readings = ofRaster.get(job) ?? measureEdge(job, raster);
  ofRaster.set(job, readings);
  return readings;
}

function measureEdge(job: Job, raster: Raster): EdgeReading[] {
  const { blank } = job;
  const places = [0, ...job.copiesMm];
  const art: ArtInFrame = {
    isArt: makeArtTest(raster, { from: 'solid', whiteIsNoArt: blank.whiteBase }),
    frame: frameOf(job),
    boxPx: job.contentBoxPx,
  };
  const readings: EdgeReading[] = [];
  for (const point of walkEdge(blank.edge, stepOf(job), blank.bleed.value))
    readings.push(readPoint(blank, art, point, places));
  return readings;
}

function readPoint(
  blank: Job['blank'],
  art: ArtInFrame,
  point: EdgePoint,
  places: readonly number[],
): EdgeReading {
  const side = point.faces === 'both' ? sideOf(point.normalX, point.normalY) : 'corners';
  const onSeam = blank.safeSides === 'top-and-bottom' && (side === 'left' || side === 'right');
  const inner = point.faces === 'outside' || onSeam ? 0 : blank.safe.value;
  const outer = point.faces === 'inside' ? 0 : blank.bleed.value;
  const spans: MmSpan[] = [];
  for (const shiftMm of places) addSpans(spans, art, point, inner, outer, shiftMm);
  if (spans.length === 0) return { point, side, reachMm: null, clearanceMm: null };
  return { point, side, ...readSpans(places.length > 1 ? inOrder(spans) : spans, inner) };
}

interface ArtInFrame {
  readonly isArt: ArtTest;
  readonly frame: ArtFrame;
  readonly boxPx: RectPx;
}

/** mm along the normal, 0 on the edge. */
interface MmSpan {
  from: number;
  to: number;
}

/** What the normal meets of the art, moved across by so much. */
function addSpans(
  spans: MmSpan[],
  { isArt, frame, boxPx }: ArtInFrame,
  point: EdgePoint,
  inner: number,
  outer: number,
  shiftMm: number,
): void {
  const start = along(point, -inner);
  const end = along(point, outer);
  const from = frame.toPx({ x: start.x - shiftMm, y: start.y });
  const to = frame.toPx({ x: end.x - shiftMm, y: end.y });
  // Most normals of art that keeps clear of the edge pass it by altogether.
  if (missesBox(boxPx, from, to)) return;
  for (const span of findRaySpans(isArt, from.x, from.y, to.x, to.y))
    spans.push({ from: span.from * (inner + outer) - inner, to: span.to * (inner + outer) - inner });
}

/** Spans of art and of its repeats, in order and merged. */
function inOrder(spans: readonly MmSpan[]): MmSpan[] {
  const merged: MmSpan[] = [];
  for (const span of spans.toSorted((one, other) => one.from - other.from)) {
    const last = merged.at(-1);
    if (last && span.from <= last.to + TOUCH_MM) last.to = Math.max(last.to, span.to);
    else merged.push({ ...span });
  }
  return merged;
}

/** Every pixel of the art is met, unless it is finer than what will be printed. */
function stepOf({ effectivePpi, ppi }: Job): number {
  const pixelMm = MM_PER_INCH / Math.max(effectivePpi.x, effectivePpi.y);
  return Math.min(LONGEST_STEP_MM, Math.max(pixelMm, MM_PER_INCH / ppi));
}

/** Both ends beyond the same side of the box; a ray that ends on its rim may still touch it. */
function missesBox(box: RectPx, a: PointPx, b: PointPx): boolean {
  return (
    (a.x < box.x && b.x < box.x) ||
    (a.y < box.y && b.y < box.y) ||
    (a.x > box.x + box.width && b.x > box.x + box.width) ||
    (a.y > box.y + box.height && b.y > box.y + box.height)
  );
}

function along({ x, y, normalX, normalY }: EdgePoint, mm: number): PointMm {
  return { x: x + normalX * mm, y: y + normalY * mm };
}

/** `spans` in mm along the normal, 0 on the edge, in order. */
function readSpans(spans: readonly MmSpan[], inner: number): Pick<EdgeReading, 'reachMm' | 'clearanceMm'> {
  const touching = spans.findIndex(({ from, to }) => from <= TOUCH_MM && to >= -TOUCH_MM);
  if (touching >= 0) {
    let reachMm = Math.max(0, spans[touching]!.to);
    for (const next of spans.slice(touching + 1)) {
      if (next.from - reachMm >= LONGEST_STEP_MM) break;
      reachMm = next.to;
    }
    return { reachMm, clearanceMm: null };
  }
  const inside = spans.filter(({ to }) => to < 0).at(-1);
  const withinRing = inside !== undefined && inside.to > -inner + TOUCH_MM;
  return { reachMm: null, clearanceMm: withinRing ? -inside.to : null };
}
