import type { Drawing } from './geometry/drawing.ts';
import { walkEdge } from './geometry/edge-walk.ts';
import type { PointMm } from './geometry/rectangle.ts';
import { fromStrip } from './geometry/sector.ts';
import type { BlankInHand } from './job/job.ts';
import { BLACK, LINE_MM } from './sheet/marks/mark-style.ts';
import { rollLines } from './sheet/marks/roll-lines.ts';

type Body = Pick<BlankInHand, 'wrap' | 'bleed' | 'outline' | 'holes'>;

/**
 * The lines that belong to a piece, in the frame of its boxes: what the paper of a round blank is cut and rolled by, and
 * for a dummy the outline and the holes of the blank. Nothing for a flat blank that is no dummy.
 */
export function rollOf(
  blank: Body,
  dummy = false,
): { readonly roll?: { readonly lines: Drawing; readonly isArc: boolean } } {
  const { wrap, bleed } = blank;
  if (!wrap) return dummy ? { roll: { lines: outlineOf(blank), isArc: false } } : {};
  const { sector, strip, onceRoundMm } = wrap.development;
  const lines = rollLines({
    sector,
    stripMm: { width: strip.widthMm, height: strip.heightMm },
    onceRoundMm,
    overlapMm: strip.widthMm - onceRoundMm,
    bleedMm: bleed.value,
  });
  return { roll: { lines: dummy ? [...lines, ...outlineOf(blank)] : lines, isArc: sector !== null } };
}

/** Straight pieces of a curved outline: each departs from it by far less than the line is wide. */
const STEP_MM = 2;

function outlineOf({ outline, holes, wrap }: Body): Drawing {
  const sector = wrap?.development.sector;
  const at = (point: PointMm) => (sector ? fromStrip(sector, point) : point);
  return [outline, ...holes.map(({ shape }) => shape)].flatMap((shape) => {
    // A corner comes once for each normal of its fan.
    const points = walkEdge(shape, STEP_MM, STEP_MM).filter(
      ({ x, y }, i, all) => i === 0 || Math.hypot(x - all[i - 1]!.x, y - all[i - 1]!.y) > 1e-6,
    );
    return points.map(
      (from, i) =>
        ({
          kind: 'line',
          from: at(from),
          to: at(points[(i + 1) % points.length]!),
          widthMm: LINE_MM,
          colour: BLACK,
        }) as const,
    );
  });
}
