import type { Path } from '../../geometry/path.ts';
import { movePath, type QuarterTurn } from '../../geometry/rigid-move.ts';
import type { MarkBlock } from './mark-block.ts';
import { BLACK } from './mark-style.ts';
import { withCaption } from './text-block.ts';

const SIDE_MM = 8;

/** An arrow up about the origin, within a square of `SIDE_MM`. */
const ARROW: Path = [
  ['M', 0, -4],
  ['L', 2.8, -0.4],
  ['L', 0.8, -0.4],
  ['L', 0.8, 4],
  ['L', -0.8, 4],
  ['L', -0.8, -0.4],
  ['L', -2.8, -0.4],
  ['Z'],
];

/** Where the top of the art is, for pieces that lie on the page with this turn. */
export function upArrow(turn: QuarterTurn): MarkBlock {
  const path = movePath(ARROW, { turn, by: { x: SIDE_MM / 2, y: SIDE_MM / 2 } });
  const picture = {
    widthMm: SIDE_MM,
    heightMm: SIDE_MM,
    drawing: [{ kind: 'path', path, colour: BLACK }],
  } as const;
  return withCaption(picture, ['Top of the art']);
}
