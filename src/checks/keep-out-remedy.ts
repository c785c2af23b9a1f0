import { middleOf, type PointMm, type PointPx } from '../geometry/rectangle.ts';
import { frameOf } from '../job/art-frame.ts';
import type { Job } from '../job/job.ts';
import { marginWithinSafe } from '../job/lines.ts';
import type { ArtTest } from '../raster/art-test.ts';
import { sampleZones } from './keep-out-zone.ts';
import { TOUCH_MM } from './sides.ts';

/** Sizes are tried in steps of one percent down to a fifth: smaller art is another design. */
const SMALLEST_SCALE = 0.2;
/** Offsets are tried in half millimetres, as a hand can follow them, up to 30 mm. */
const OFFSET_STEP_MM = 0.5;
const OFFSET_STEPS = 60;

/** The largest factor under 1 about the middle of the art that clears every hole, or null. */
export function findClearingScale(job: Job, isArt: ArtTest, keepOutMm: number): number | null {
  const zone = sampleZones(job.blank.holes, keepOutMm);
  const middle = middleOf(job.placementMm);
  for (let percent = 99; percent >= SMALLEST_SCALE * 100; percent -= 1) {
    const scale = percent / 100;
    const shrunk = (point: PointMm) => ({
      x: middle.x + (point.x - middle.x) / scale,
      y: middle.y + (point.y - middle.y) / scale,
    });
    if (isClear(job, isArt, zone, shrunk)) return scale;
  }
  return null;
}

/** The smallest further shift that clears every hole and keeps the art within the safe line, added to the offset asked for; or null. */
export function findClearingOffset(
  job: Job,
  isArt: ArtTest,
  keepOutMm: number,
  rimPx: readonly PointPx[],
): PointMm | null {
  const frame = frameOf(job);
  const rim = rimPx.map(frame.toMm);
  const zone = sampleZones(job.blank.holes, keepOutMm);
  for (const shift of shiftsByLength()) {
    if (!rim.every(({ x, y }) => marginWithinSafe(job.blank, x + shift.x, y + shift.y) >= -TOUCH_MM))
      continue;
    const moved = (point: PointMm) => ({ x: point.x - shift.x, y: point.y - shift.y });
    if (isClear(job, isArt, zone, moved)) return { x: job.offsetMm.x + shift.x, y: job.offsetMm.y + shift.y };
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
