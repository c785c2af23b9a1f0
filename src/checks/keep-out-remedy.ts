import { middleOf, type PointMm, type PointPx, type RectMm } from '../geometry/rectangle.ts';
import { frameOf } from '../job/art-frame.ts';
import type { Job } from '../job/job.ts';
import { marginWithinSafe, TOUCH_MM } from '../job/lines.ts';
import type { ArtTest } from '../raster/art-test.ts';
import { sampleZones } from './keep-out-zone.ts';

/** Sizes are tried in steps of one percent down to a fifth: smaller art is another design. */
const SMALLEST_SCALE = 0.2;
/** Offsets are tried in half millimetres, as a hand can follow them, up to 30 mm. */
const OFFSET_STEP_MM = 0.5;
const OFFSET_STEPS = 60;

/** Measures the art at another place: true when no hole is touched. Slow and exact; the search here is quick and sampled. */
export type Clears = (placementMm: RectMm) => boolean;

/** The largest width under the present one, in tenths of a millimetre, that clears every hole about the middle of the art; or null. */
export function findClearingWidth(
  job: Job,
  isArt: ArtTest,
  keepOutMm: number,
  clears: Clears,
): number | null {
  const zone = sampleZones(job.blank.holes, keepOutMm);
  const { placementMm } = job;
  const middle = middleOf(placementMm);
  for (let percent = 99; percent >= SMALLEST_SCALE * 100; percent -= 1) {
    const width = Math.floor((placementMm.width * percent) / 10 + 1e-6) / 10;
    const scale = width / placementMm.width;
    if (scale === 0) return null;
    const shrunk = (point: PointMm) => ({
      x: middle.x + (point.x - middle.x) / scale,
      y: middle.y + (point.y - middle.y) / scale,
    });
    const height = placementMm.height * scale;
    const placement = { x: middle.x - width / 2, y: middle.y - height / 2, width, height };
    if (isClear(job, isArt, zone, shrunk) && clears(placement)) return width;
  }
  return null;
}

/** The smallest further shift that clears every hole and keeps the art within the safe line, added to the offset asked for; or null. */
export function findClearingOffset(
  job: Job,
  isArt: ArtTest,
  keepOutMm: number,
  rimPx: readonly PointPx[],
  clears: Clears,
): PointMm | null {
  const { placementMm, offsetMm } = job;
  const frame = frameOf(job);
  const rim = rimPx.map((point) => frame.toMm(point));
  const zone = sampleZones(job.blank.holes, keepOutMm);
  for (const shift of shiftsByLength()) {
    if (!rim.every(({ x, y }) => marginWithinSafe(job.blank, x + shift.x, y + shift.y) >= -TOUCH_MM))
      continue;
    const moved = (point: PointMm) => ({ x: point.x - shift.x, y: point.y - shift.y });
    const placement = { ...placementMm, x: placementMm.x + shift.x, y: placementMm.y + shift.y };
    if (isClear(job, isArt, zone, moved) && clears(placement))
      return { x: offsetMm.x + shift.x, y: offsetMm.y + shift.y };
  }
  return null;
}

/** True when no sampled point of the zone, seen through `back` (from the changed art to the present one), meets art. */
function isClear(
  job: Job,
  isArt: ArtTest,
  zone: readonly PointMm[],
  back: (point: PointMm) => PointMm,
): boolean {
  const frame = frameOf(job);
  return zone.every((point) => {
    const { x, y } = frame.toPx(back(point));
    return !isArt(Math.floor(x), Math.floor(y));
  });
}

function shiftsByLength(): PointMm[] {
  const shifts: PointMm[] = [];
  for (let i = -OFFSET_STEPS; i <= OFFSET_STEPS; i += 1) {
    for (let j = -OFFSET_STEPS; j <= OFFSET_STEPS; j += 1) {
      if (Math.hypot(i, j) <= OFFSET_STEPS && (i !== 0 || j !== 0))
        shifts.push({ x: i * OFFSET_STEP_MM, y: j * OFFSET_STEP_MM });
    }
  }
  return shifts.sort((p, q) => Math.hypot(p.x, p.y) - Math.hypot(q.x, q.y) || p.y - q.y || p.x - q.x);
}
