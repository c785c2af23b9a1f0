import { findLargestScale } from '../geometry/largest-scale.ts';
import { middleOf, type PointMm, type PointPx } from '../geometry/rectangle.ts';
import { frameOf, turnSize } from '../job/art-frame.ts';
import type { Job } from '../job/job.ts';
import { hasConvexEdge, marginWithinSafe, TOUCH_MM } from '../job/lines.ts';
import { SEARCH_STEP_MM, scaleToCover } from '../job/place-art.ts';
import type { Raster } from '../raster/raster.ts';
import { type EdgeReading, readEdge } from './edge-profile.ts';

export type ShortReading = EdgeReading & { readonly reachMm: number };
export type CloseReading = EdgeReading & { readonly clearanceMm: number };

/** True for art that reaches the edge and ends before the bleed does. */
export function isShort(reading: EdgeReading, bleedMm: number): reading is ShortReading {
  return reading.reachMm !== null && reading.reachMm < bleedMm - TOUCH_MM && reading.point.faces !== 'inside';
}

/** True for art that ends between the safe line and the edge. */
export function isClose(reading: EdgeReading): reading is CloseReading {
  return reading.clearanceMm !== null && reading.point.faces !== 'outside';
}

/** `widthMm` in tenths of a millimetre, as a person can type it, when art of that width passes at the edge; or null. */
export function widthThatPasses(
  job: Job,
  raster: Raster,
  widthMm: number,
  round: 'up' | 'down',
): number | null {
  const tenths = round === 'up' ? Math.ceil(widthMm * 10 - 1e-6) : Math.floor(widthMm * 10 + 1e-6);
  // No size is no advice.
  if (tenths < 10) return null;
  return passesAtEdge(resizeArt(job, tenths / 10 / job.placementMm.width), raster) ? tenths / 10 : null;
}

/** True when `cover` is another size than the one asked for, and art of that size passes at the edge. */
export function coverPasses(job: Job, raster: Raster): boolean {
  return job.fit !== 'cover' && passesAtEdge(placeToCover(job), raster);
}

/** True when art of the size of `cover` goes on to the bleed line all round; white on a white base is no art. */
export function coverBleedsAllRound(job: Job, raster: Raster): boolean {
  const bleedMm = job.blank.bleed.value;
  return readEdge(placeToCover(job), raster).every(
    ({ point, reachMm }) => point.faces === 'inside' || (reachMm !== null && reachMm >= bleedMm - TOUCH_MM),
  );
}

/** The width at which the art, left in its place, would lie just within the safe line; 0 when its middle lies beyond. */
export function widthWithinSafe(job: Job, rimPx: readonly PointPx[]): number {
  const { blank, placementMm } = job;
  const frame = frameOf(job);
  const middle = middleOf(placementMm);
  const rim = rimPx
    .map((point) => frame.toMm(point))
    .map(({ x, y }) => ({ x: x - middle.x, y: y - middle.y }));
  const { width, height } = blank.edge.box;
  const scale = findLargestScale(rim, middle, (x, y) => marginWithinSafe(blank, x, y), {
    convex: hasConvexEdge(blank),
    reachMm: Math.hypot(width, height),
    stepMm: SEARCH_STEP_MM,
  });
  return placementMm.width * scale;
}

/** True when art there neither ends between the safe line and the edge nor short of the bleed line. */
export function passesAtEdge(job: Job, raster: Raster): boolean {
  return readEdge(job, raster).every(
    (reading) => !isShort(reading, job.blank.bleed.value) && !isClose(reading),
  );
}

function placeToCover(job: Job): Job {
  const turned = turnSize(job.contentBoxPx, job.turn);
  const scale = scaleToCover(job.blank, turned);
  return placeAt(job, turned.width * scale.x, turned.height * scale.y);
}

/** The same art, so many times as large about the same middle. */
export function resizeArt(job: Job, scale: number): Job {
  return placeAt(job, job.placementMm.width * scale, job.placementMm.height * scale);
}

/** The same art elsewhere. */
export function moveArt(job: Job, by: PointMm): Job {
  const { x, y, width, height } = job.placementMm;
  return { ...job, placementMm: { x: x + by.x, y: y + by.y, width, height } };
}

/** The same art at another size about the same middle. */
function placeAt(job: Job, width: number, height: number): Job {
  const { placementMm, effectivePpi } = job;
  const middle = middleOf(placementMm);
  return {
    ...job,
    placementMm: { x: middle.x - width / 2, y: middle.y - height / 2, width, height },
    effectivePpi: {
      x: (effectivePpi.x * placementMm.width) / width,
      y: (effectivePpi.y * placementMm.height) / height,
    },
  };
}
