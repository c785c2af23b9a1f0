import { findBounds, middleOf, type PointMm, type RectMm } from '../geometry/rectangle.ts';
import type { BlankInHand } from '../job/job.ts';
import { sideOf } from './sides.ts';
import type { StandingDetail } from './standing-detail.ts';
import { listUnsafeZones, type UnsafeZone } from './unsafe-zones.ts';

/** Edges are known to a sample of a quarter of a millimetre: what lies less deep may lie on the line. */
export const SLACK_MM = 0.25;
/** Fewest cells within a zone: less is a tip (own choice). */
const FEWEST = 2;
/** What is repeated has at least so many of its size within the safe line, and comes near the edge on so many sides (own choice). */
const REPEATS = { within: 4, sides: 3, many: 12, size: 2 } as const;

/** Detail that lies in a zone where it may be lost. */
export interface UnsafeDetail {
  readonly zone: UnsafeZone;
  /** All of the detail that hangs together, on the blank. */
  readonly boxMm: RectMm;
  /** From its nearest edge in the zone, mm. */
  readonly clearanceMm: number;
  readonly cellsWithin: number;
}

/** What of the detail lies where it may be lost, in the order of the zones; without the motifs of a pattern, which is meant to be cut. */
export function findUnsafeDetail(standing: readonly StandingDetail[], blank: BlankInHand): UnsafeDetail[] {
  const zones = listUnsafeZones(blank);
  const unsafe = standing.map((detail) => placeIn(detail, zones));
  const own = unsafe.filter((one, i) => one !== null && !isOfPattern(standing[i]!, standing, unsafe, blank));
  return zones.flatMap((zone) => own.flatMap((one) => (one?.zone === zone ? [one] : [])));
}

function placeIn({ cells }: StandingDetail, zones: readonly UnsafeZone[]): UnsafeDetail | null {
  for (const zone of zones) {
    const isWithin = ({ x, y }: PointMm) => zone.depth(x, y) > SLACK_MM;
    const within = cells.map((points) => points.filter(isWithin)).filter(({ length }) => length > 0);
    if (within.length < FEWEST) continue;
    const clearanceMm = within
      .flat()
      .reduce((least, { x, y }) => Math.min(least, zone.clearance(x, y)), Infinity);
    return { zone, boxMm: findBounds(cells.flat())!, clearanceMm, cellsWithin: within.length };
  }
  return null;
}

/** Things of about its size lie all over, and some of them near the edge on most sides. */
function isOfPattern(
  detail: StandingDetail,
  standing: readonly StandingDetail[],
  unsafe: readonly (UnsafeDetail | null)[],
  { edge }: BlankInHand,
): boolean {
  const middle = middleOf(edge.box);
  const size = detail.cells.length;
  let within = 0;
  const sides = new Set<string>();
  standing.forEach(({ cells }, i) => {
    if (cells.length * REPEATS.size < size || cells.length > size * REPEATS.size) return;
    const other = unsafe[i]!;
    if (other === null) within += 1;
    else {
      const { x, y } = middleOf(other.boxMm);
      sides.add(sideOf((x - middle.x) / edge.box.width, (y - middle.y) / edge.box.height));
    }
  });
  return within >= REPEATS.many || (within >= REPEATS.within && sides.size >= REPEATS.sides);
}
