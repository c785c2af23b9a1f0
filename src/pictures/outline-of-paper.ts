import type { Drawing, InkColour } from '../geometry/drawing.ts';
import type { PointMm } from '../geometry/rectangle.ts';
import { fromStrip } from '../geometry/sector.ts';
import type { WrapInHand } from '../job/wrap-in-hand.ts';

const GRAY: InkColour = { r: 120, g: 120, b: 120 };
const LINE_MM = 0.25;
/** Straight pieces of an arc: each departs from it by far less than a line is wide. */
const STEP_MM = 2;

/** The outline of the flat paper of a round body as a thin gray line, in the frame of its box. */
export function outlineOfPaper({ development }: Pick<WrapInHand, 'development'>): Drawing {
  const { sector, strip } = development;
  const at = (point: PointMm) => (sector ? fromStrip(sector, point) : point);
  const count = sector ? Math.ceil(strip.widthMm / STEP_MM) : 1;
  const along = Array.from({ length: count + 1 }, (_, i) => (i / count) * strip.widthMm);
  const rim = along.map((x) => at({ x, y: 0 }));
  const foot = along.toReversed().map((x) => at({ x, y: strip.heightMm }));
  const points = [...rim, ...foot, rim[0]!];
  return points
    .slice(1)
    .map((to, i) => ({ kind: 'line', from: points[i]!, to, widthMm: LINE_MM, colour: GRAY }) as const);
}
