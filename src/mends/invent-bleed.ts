import type { PointMm, PointPx, RectPx } from '../geometry/rectangle.ts';
import { distanceInside } from '../geometry/signed-distance.ts';
import { frameOf, rectToPx } from '../job/art-frame.ts';
import type { Job } from '../job/job.ts';
import { bleedBoxOf } from '../job/lines.ts';
import { makeArtTest } from '../raster/art-test.ts';
import { embedRaster } from '../raster/embed.ts';
import { channelsOf, fullScaleOf, type Raster } from '../raster/raster.ts';
import { findRaySpans } from '../raster/ray-spans.ts';
import type { ExtendHow, MendedRaster } from './define-mend.ts';

/** Pixels are passed over by blocks of so many where the block lies wholly off the bleed. */
const BLOCK = 32;
/** Half a diagonal: how far the corner of a pixel lies from its middle. */
const CORNER = Math.SQRT1_2;
/** Width of the difference quotient that finds the way outward; far below a pixel, far above what doubles lose. */
const NUDGE_MM = 1e-3;
/** Pixels that are averaged along the rim on either side of the middle one. */
const BLUR_REACH = 4;

/**
 * Every pixel between the edge and the bleed line that is not art, where art reaches the edge on the way to it, gets
 * a colour from the art on that way. Inside the edge nothing changes. The canvas grows where it has no room.
 */
export function inventBleed(raster: Raster, job: Job, how: ExtendHow): MendedRaster {
  const { blank } = job;
  const bleedMm = blank.bleed.value;
  const frame = frameOf(job);
  const isArt = makeArtTest(raster, { from: 'solid', whiteIsNoArt: blank.whiteBase });
  const pixelMm = largestPixelMm(job);
  const area = roundOut(rectToPx(frame, bleedBoxOf(blank)));
  const originPx = { x: Math.max(0, -area.x), y: Math.max(0, -area.y) };
  let target: Raster | null = null;
  let inventedMm = 0;
  const distanceAt = ({ x, y }: PointMm) => distanceInside(blank.edge, x, y);

  for (let top = area.y; top < area.y + area.height; top += BLOCK)
    for (let left = area.x; left < area.x + area.width; left += BLOCK) {
      const half = BLOCK * CORNER * pixelMm;
      const middle = distanceAt(frame.toMm({ x: left + BLOCK / 2, y: top + BLOCK / 2 }));
      if (middle > half || middle < -bleedMm - half - pixelMm) continue;
      const right = Math.min(left + BLOCK, area.x + area.width);
      const bottom = Math.min(top + BLOCK, area.y + area.height);
      for (let y = top; y < bottom; y++) for (let x = left; x < right; x++) invent(x, y);
    }
  return target === null ? { raster } : { raster: target, originPx, inventedMm };

  function invent(x: number, y: number): void {
    if (isArt(x, y)) return;
    const pointPx = { x: x + 0.5, y: y + 0.5 };
    const point = frame.toMm(pointPx);
    const outside = -distanceAt(point);
    if (outside < 0 || outside > bleedMm + CORNER * pixelMm) return;
    const normal = findNormal(point);
    const along = (mm: number): PointPx =>
      frame.toPx({ x: point.x + normal.x * (mm - outside), y: point.y + normal.y * (mm - outside) });
    // From a pixel inside the edge, so that art which ends just on it is met.
    const from = -pixelMm;
    const [span] = findRaySpans(isArt, along(from).x, along(from).y, pointPx.x, pointPx.y);
    if (span === undefined || from + span.from * (outside - from) > 0) return;
    const endMm = from + span.to * (outside - from);
    const colour = takeColour(along, normal, endMm, outside - endMm);
    if (colour === null) return;
    target ??= embedRaster(raster, growTo(raster, area));
    inventedMm = Math.max(inventedMm, Math.min(bleedMm, outside) - endMm);
    lay(x, y, colour);
  }

  function findNormal(at: PointMm): PointMm {
    const dx = distanceAt({ x: at.x - NUDGE_MM, y: at.y }) - distanceAt({ x: at.x + NUDGE_MM, y: at.y });
    const dy = distanceAt({ x: at.x, y: at.y - NUDGE_MM }) - distanceAt({ x: at.x, y: at.y + NUDGE_MM });
    const length = Math.hypot(dx, dy) || 1;
    return { x: dx / length, y: dy / length };
  }

  /** The samples of a pixel of the art; a pixel within its end, since the end itself may be soft. */
  function takeColour(
    along: (mm: number) => PointPx,
    normal: PointMm,
    endMm: number,
    beyondMm: number,
  ): readonly number[] | null {
    const rim =
      sampleAt(along(endMm - 1.5 * pixelMm)) ??
      sampleAt(along(endMm - pixelMm / 2)) ??
      sampleAt(along(endMm - pixelMm / 64));
    // Art that is only touched at the corner of a pixel has no colour to go on with.
    if (rim === null) return null;
    if (how === 'edge') return rim;
    if (how === 'reflect') return sampleAt(along(endMm - Math.max(beyondMm, 1.5 * pixelMm))) ?? rim;
    const { x, y } = along(endMm - 1.5 * pixelMm);
    const side = frame.toPx({ x: -normal.y, y: normal.x });
    const zero = frame.toPx({ x: 0, y: 0 });
    const sums = rim.map(() => 0);
    let count = 0;
    for (let i = -BLUR_REACH; i <= BLUR_REACH; i++) {
      const step = (i / BLUR_REACH) * beyondMm;
      const sample = sampleAt({ x: x + (side.x - zero.x) * step, y: y + (side.y - zero.y) * step });
      if (sample === null) continue;
      count += 1;
      sample.forEach((value, k) => {
        sums[k]! += value;
      });
    }
    return count === 0 ? rim : sums.map((sum) => Math.round(sum / count));
  }

  /** Colour without alpha; null where there is no art. */
  function sampleAt({ x, y }: PointPx): readonly number[] | null {
    const [column, row] = [Math.floor(x), Math.floor(y)];
    if (!isArt(column, row)) return null;
    const channels = channelsOf(raster);
    const at = (row * raster.widthPx + column) * channels;
    return Array.from(raster.data.subarray(at, at + (raster.hasAlpha ? channels - 1 : channels)));
  }

  function lay(x: number, y: number, colour: readonly number[]): void {
    const { data, widthPx } = target!;
    const at = ((y + originPx.y) * widthPx + x + originPx.x) * (colour.length + 1);
    data.set(colour, at);
    data[at + colour.length] = fullScaleOf(raster);
  }
}

/** In the axes of the blank the two may differ. */
function largestPixelMm({ placementMm, contentBoxPx, turn }: Job): number {
  const across = turn === 90 || turn === 270;
  const width = across ? contentBoxPx.height : contentBoxPx.width;
  const height = across ? contentBoxPx.width : contentBoxPx.height;
  return Math.max(placementMm.width / width, placementMm.height / height);
}

/** All pixels that a rectangle touches; one that it misses by what doubles lose is not touched. */
function roundOut({ x, y, width, height }: RectPx): RectPx {
  const left = Math.floor(x + 1e-6);
  const top = Math.floor(y + 1e-6);
  return {
    x: left,
    y: top,
    width: Math.ceil(x + width - 1e-6) - left,
    height: Math.ceil(y + height - 1e-6) - top,
  };
}

/** The canvas and the area together. */
function growTo({ widthPx, heightPx }: Raster, area: RectPx): RectPx {
  const x = Math.min(0, area.x);
  const y = Math.min(0, area.y);
  return {
    x,
    y,
    width: Math.max(widthPx, area.x + area.width) - x,
    height: Math.max(heightPx, area.y + area.height) - y,
  };
}
