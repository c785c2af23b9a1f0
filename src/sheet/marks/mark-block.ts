import type { Drawing } from '../../geometry/drawing.ts';
import type { RectMm } from '../../geometry/rectangle.ts';
import { moveDrawing } from '../../geometry/rigid-move.ts';

/** A mark that may stand anywhere: its ink lies within 0, 0 and its size. */
export interface MarkBlock {
  readonly widthMm: number;
  readonly heightMm: number;
  readonly drawing: Drawing;
  /** Of a ruler: from end to end. */
  readonly lengthMm?: number;
}

/** The block turned so that it reads from the bottom up. */
export function standBlock(block: MarkBlock): MarkBlock {
  const { widthMm, heightMm, drawing } = block;
  return {
    ...block,
    widthMm: heightMm,
    heightMm: widthMm,
    drawing: moveDrawing(drawing, { turn: 270, by: { x: 0, y: widthMm } }),
  };
}

/** Its drawing at a place of the page. */
export function drawBlock({ drawing }: MarkBlock, { x, y }: RectMm): Drawing {
  return moveDrawing(drawing, { by: { x, y } });
}

/** Blocks in the order in which they are tried, each made when it is first asked for, and kept. */
export function inTurn(makers: readonly (() => MarkBlock)[]): Iterable<MarkBlock> {
  const made: MarkBlock[] = [];
  return {
    *[Symbol.iterator]() {
      for (const [at, make] of makers.entries()) {
        made[at] ??= make();
        yield made[at];
      }
    },
  };
}

/** Each lying, then standing. */
export function bothWays(makers: readonly (() => MarkBlock)[]): Iterable<MarkBlock> {
  return inTurn(makers.flatMap((make) => [make, () => standBlock(make())]));
}
