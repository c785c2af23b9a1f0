import { offsetShape } from '../geometry/offset-shape.ts';
import type { Shape } from '../geometry/shape.ts';
import type { BlankInHand } from './job.ts';

/** The lines of a blank that findings speak of, in mm from the top left of its outline box. */
export interface BlankLines {
  readonly outline: Shape;
  /** null where it is the outline itself. */
  readonly edge: Shape | null;
  /** null where the blank is too small to have one. */
  readonly safe: Shape | null;
  readonly bleed: Shape;
  readonly holes: readonly Shape[];
  /** How far inside the edge the safe line lies, and outside it the bleed line. */
  readonly safeMm: number;
  readonly bleedMm: number;
}

/** Level lines of the distance from the edge: the same that art is judged by. */
export function linesOf(blank: BlankInHand): BlankLines {
  const { outline, edge, holes, safe, bleed } = blank;
  return {
    outline,
    edge: edge === outline ? null : edge,
    safe: blank.safeSides === 'all' ? offsetShape(edge, -safe.value) : betweenRimAndFoot(blank),
    bleed: offsetShape(edge, bleed.value) ?? edge,
    holes: holes.map(({ shape }) => shape),
    safeMm: safe.value,
    bleedMm: bleed.value,
  };
}

/** On a whole wrap only rim and foot have an inset. */
function betweenRimAndFoot({ edge, safe }: BlankInHand): Shape | null {
  const { x, y, width, height } = edge.box;
  if (height <= 2 * safe.value) return null;
  return { kind: 'rect', box: { x, y: y + safe.value, width, height: height - 2 * safe.value } };
}
