import type { EdgePoint } from '../geometry/edge-walk.ts';
import { findBounds, middleOf, type RectMm, type RectPx } from '../geometry/rectangle.ts';
import { frameOf, rectToPx } from '../job/art-frame.ts';
import type { Job } from '../job/job.ts';
import type { Raster } from '../raster/raster.ts';
import type { EdgeReading } from './edge-profile.ts';

/** Share of the edge, in percent, that the given readings stand for; fans at corners have no length of their own. */
export function shareOfEdge(all: readonly EdgeReading[], some: readonly EdgeReading[]): number {
  const length = (readings: readonly EdgeReading[]) =>
    readings.reduce((sum, { point }) => sum + point.lengthMm, 0);
  return (100 * length(some)) / length(all);
}

/** The box round the given points of the edge, grown by `marginMm`, on the blank and in the artwork. */
export function placeOfReadings(
  job: Job,
  raster: Raster,
  readings: readonly EdgeReading[],
  marginMm: number,
): { px: RectPx; mm: RectMm } {
  const bounds = findBounds(readings.map(({ point }) => point))!;
  const mm = {
    x: bounds.x - marginMm,
    y: bounds.y - marginMm,
    width: bounds.width + 2 * marginMm,
    height: bounds.height + 2 * marginMm,
  };
  return { mm, px: clipToPixels(rectToPx(frameOf(job), mm), raster) };
}

/** The whole pixels of a picture that a rectangle touches; an empty rectangle at the rim when it touches none. */
export function clipToPixels(
  rect: RectPx,
  { widthPx, heightPx }: Pick<Raster, 'widthPx' | 'heightPx'>,
): RectPx {
  const clip = (value: number, most: number) => Math.min(most, Math.max(0, value));
  const x = clip(Math.floor(rect.x), widthPx);
  const y = clip(Math.floor(rect.y), heightPx);
  return {
    x,
    y,
    width: clip(Math.ceil(rect.x + rect.width), widthPx) - x,
    height: clip(Math.ceil(rect.y + rect.height), heightPx) - y,
  };
}

/**
 * The factor about the middle of the art that brings its end along each normal from `hasMm` to `wantsMm`
 * (mm outside the edge): the largest where art must grow, the smallest where it must shrink. null where no
 * factor above 0 does it. Exact for art whose rim is parallel to the edge, an estimate for other art.
 */
export function scaleToReach(
  { placementMm }: Job,
  wishes: readonly { readonly point: EdgePoint; readonly hasMm: number; readonly wantsMm: number }[],
): number | null {
  const middle = middleOf(placementMm);
  let scale: number | null = null;
  for (const { point, hasMm, wantsMm } of wishes) {
    const base = (point.x - middle.x) * point.normalX + (point.y - middle.y) * point.normalY;
    const factor = (base + wantsMm) / (base + hasMm);
    if (!(factor > 0) || !Number.isFinite(factor)) return null;
    if (scale === null) scale = factor;
    else scale = wantsMm > hasMm ? Math.max(scale, factor) : Math.min(scale, factor);
  }
  return scale;
}
