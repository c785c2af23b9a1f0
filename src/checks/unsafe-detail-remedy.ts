import { middleOf, type PointMm } from '../geometry/rectangle.ts';
import type { Job } from '../job/job.ts';
import { bleedBoxOf, TOUCH_MM } from '../job/lines.ts';
import type { Raster } from '../raster/raster.ts';
import { moveArt, passesAtEdge, resizeArt } from './edge-remedy.ts';
import type { Fact } from './finding.ts';
import type { StandingDetail } from './standing-detail.ts';
import { SLACK_MM } from './unsafe-detail.ts';
import { listUnsafeZones } from './unsafe-zones.ts';

/** Sizes are tried in steps of one percent down to a half: smaller art is another design (own choice). */
const SMALLEST_PERCENT = 50;
/** Offsets are tried in half millimetres, as a hand can follow them, up to 30 mm. */
const OFFSET_STEP_MM = 0.5;
const OFFSET_STEPS = 60;
const DIRECTIONS = [
  [0, -1],
  [0, 1],
  [-1, 0],
  [1, 0],
  [-1, -1],
  [1, -1],
  [-1, 1],
  [1, 1],
] as const;

/**
 * What would bring all detail that stands out into safe places and still bleed all round: facts; none where nothing
 * would, or where detail goes on beyond the print.
 */
export function findRemedy(
  job: Job,
  raster: Raster,
  standing: readonly StandingDetail[],
): Readonly<Record<string, Fact>> {
  if (standing.some(({ isCut }) => isCut)) return {};
  const zones = listUnsafeZones(job.blank);
  const points = standing.flatMap(({ cells }) => cells.flat());
  const isSafe = (change: (point: PointMm) => PointMm) =>
    points.every((point) => {
      const { x, y } = change(point);
      return zones.every(({ depth }) => depth(x, y) <= SLACK_MM && depth(x, y) !== -Infinity);
    });
  const percent = findPercent(job, raster, isSafe);
  const offset = findOffset(job, raster, isSafe);
  return {
    ...(percent === null
      ? {}
      : {
          smallerPercent: percent,
          widthToClearMm: Math.floor((job.placementMm.width * (100 - percent)) / 10 + 1e-6) / 10,
        }),
    ...(offset === null ? {} : { offsetXMm: offset.x, offsetYMm: offset.y }),
  };
}

/** Its box reaches the bleed line on all four sides, and the art does so all round; the second costs a walk along the edge. */
function bleeds(job: Job, raster: Raster): boolean {
  const { x, y, width, height } = job.placementMm;
  const wanted = bleedBoxOf(job.blank);
  const isWide = x <= wanted.x + TOUCH_MM && x + width >= wanted.x + wanted.width - TOUCH_MM;
  const isHigh = y <= wanted.y + TOUCH_MM && y + height >= wanted.y + wanted.height - TOUCH_MM;
  return isWide && isHigh && passesAtEdge(job, raster);
}

type IsSafe = (change: (point: PointMm) => PointMm) => boolean;

function findPercent(job: Job, raster: Raster, isSafe: IsSafe): number | null {
  const middle = middleOf(job.placementMm);
  for (let percent = 1; percent <= 100 - SMALLEST_PERCENT; percent += 1) {
    const scale = 1 - percent / 100;
    const shrunk = ({ x, y }: PointMm) => ({
      x: middle.x + (x - middle.x) * scale,
      y: middle.y + (y - middle.y) * scale,
    });
    // Smaller still would bleed even less.
    if (isSafe(shrunk)) return bleeds(resizeArt(job, scale), raster) ? percent : null;
  }
  return null;
}

/** The shortest shift in one of eight directions, added to the offset asked for. */
function findOffset(job: Job, raster: Raster, isSafe: IsSafe): PointMm | null {
  const open = new Set<(typeof DIRECTIONS)[number]>(DIRECTIONS);
  for (let i = 1; i <= OFFSET_STEPS; i += 1)
    for (const direction of open) {
      const by = { x: direction[0] * i * OFFSET_STEP_MM, y: direction[1] * i * OFFSET_STEP_MM };
      if (!isSafe((point) => ({ x: point.x + by.x, y: point.y + by.y }))) continue;
      if (bleeds(moveArt(job, by), raster)) return { x: job.offsetMm.x + by.x, y: job.offsetMm.y + by.y };
      // Farther on it would cover even less.
      open.delete(direction);
    }
  return null;
}
