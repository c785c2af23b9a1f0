import type { Drawing, DrawnItem } from '../../geometry/drawing.ts';
import type { PointMm } from '../../geometry/rectangle.ts';
import { fromStrip, type Sector } from '../../geometry/sector.ts';
import { BLACK, BLEED_GAP_MM, LINE_MM } from './mark-style.ts';

/** The flat paper of a round body, as far as its lines ask. mm; origin top left of the box of its outline. */
export interface RollPaper {
  /** null for a rectangle. */
  readonly sector: Sector | null;
  readonly stripMm: { readonly width: number; readonly height: number };
  readonly onceRoundMm: number;
  /** At mid height: how far the end lies over the beginning; negative where a gap stays. */
  readonly overlapMm: number;
  readonly bleedMm: number;
}

const [END_TICK_MM, QUARTER_TICK_MM] = [7, 4] as const;
const [DASH_MM, DASH_PITCH_MM] = [1.5, 4] as const;

/**
 * What a person cuts and rolls by, all of it outside the bleed: ticks in line with both ends of the paper and with the
 * seam that its overlap covers, shorter ones at every quarter of the way round from handle or seam, and on an arc dashes
 * along rim and foot, to be cut off inside.
 */
export function rollLines(paper: RollPaper): Drawing {
  const { stripMm, onceRoundMm, overlapMm } = paper;
  const ends = [0, stripMm.width, ...(overlapMm > 0 ? [onceRoundMm] : [])];
  const startMm = Math.max(0, -overlapMm) / 2;
  const quarters = [1 / 4, 1 / 2, 3 / 4]
    .map((turn) => turn * onceRoundMm - startMm)
    .filter((along) => along > 0 && along < stripMm.width);
  return [
    ...ends.flatMap((along) => bothTicks(paper, along, END_TICK_MM)),
    ...quarters.flatMap((along) => bothTicks(paper, along, QUARTER_TICK_MM)),
    ...(paper.sector ? dashes(paper) : []),
  ];
}

/** One above the rim and one below the foot, square to both. */
function bothTicks(paper: RollPaper, along: number, lengthMm: number): readonly DrawnItem[] {
  const near = paper.bleedMm + BLEED_GAP_MM;
  const { height } = paper.stripMm;
  return [
    line(paper, { x: along, y: -near }, { x: along, y: -near - lengthMm }),
    line(paper, { x: along, y: height + near }, { x: along, y: height + near + lengthMm }),
  ];
}

function dashes(paper: RollPaper): readonly DrawnItem[] {
  const near = paper.bleedMm + BLEED_GAP_MM;
  const count = Math.floor((paper.stripMm.width - DASH_MM) / DASH_PITCH_MM);
  return [-near, paper.stripMm.height + near].flatMap((y) =>
    Array.from({ length: count }, (_, i) => {
      // Clear of the ticks at both ends, and even to left and right.
      const x = (paper.stripMm.width - count * DASH_PITCH_MM) / 2 + (i + 0.5) * DASH_PITCH_MM;
      return line(paper, { x: x - DASH_MM / 2, y }, { x: x + DASH_MM / 2, y });
    }),
  );
}

function line(paper: RollPaper, from: PointMm, to: PointMm): DrawnItem {
  const at = (point: PointMm) => (paper.sector ? fromStrip(paper.sector, point) : point);
  return { kind: 'line', from: at(from), to: at(to), widthMm: LINE_MM, colour: BLACK };
}
