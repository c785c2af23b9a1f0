import { moveDrawing } from '../../geometry/rigid-move.ts';
import { letter } from '../../lettering/letter.ts';
import type { MarkBlock } from './mark-block.ts';
import { BLACK } from './mark-style.ts';
import { withCaption } from './text-block.ts';

/** Height of the words' capitals: with their caption, and alone where a page is nearly full. */
const [WORD_CAP_MM, SMALL_CAP_MM] = [4, 2.5];

/**
 * Words that lie as the art does. Mirrored art: words that can only be read where the page was mirrored once too often
 * or not at all, and then say so. Art that is not mirrored: words that can only be read where that is so.
 * The caption below is for people and never mirrored with the art; the small one has none, since the words say enough.
 */
export function mirrorWitness(mirrored: boolean, size: 'full' | 'small' = 'full'): MarkBlock {
  const word = mirrored ? 'WRONG WAY ROUND' : 'RIGHT WAY ROUND';
  const capMm = size === 'full' ? WORD_CAP_MM : SMALL_CAP_MM;
  const caption = mirrored
    ? [
        'Mirrored art: the words above must read backwards.',
        'If they read right, the mirroring is wrong: do not press.',
      ]
    : [
        'Art that is not mirrored: the words above must read right.',
        'If they read backwards, the page was mirrored: do not press.',
      ];
  const { path, widthMm } = letter(word, {
    capHeightMm: capMm,
    at: { x: 0, y: capMm },
    mirrored,
  });
  const ink = { kind: 'path', path, colour: BLACK } as const;
  // Round letters reach a little over and under the lines that capitals stand between.
  const below = { by: { x: 0, y: OVERSHOOT_MM } };
  return withCaption(
    { widthMm, heightMm: capMm + 2 * OVERSHOOT_MM, drawing: moveDrawing([ink], below) },
    size === 'full' ? caption : [],
  );
}

const OVERSHOOT_MM = 0.1;
