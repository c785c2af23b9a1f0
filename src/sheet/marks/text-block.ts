import { moveDrawing } from '../../geometry/rigid-move.ts';
import { letter } from '../../lettering/letter.ts';
import type { MarkBlock } from './mark-block.ts';
import { ACCENT_SHARE, BLACK, CAP_MM, DESCENT_SHARE, LINE_PITCH_MM } from './mark-style.ts';

/**
 * Lines of text below each other, with room for accents and tails; what is wider than `maxWidthMm` is shortened. Signs
 * that reach further than usual (a `j` to the left, two accents on a capital) widen the block.
 */
export function textBlock(lines: readonly string[], maxWidthMm = Infinity): MarkBlock {
  const firstBaseline = CAP_MM * (1 + ACCENT_SHARE);
  const letterings = lines.map((line, i) =>
    letter(line, { capHeightMm: CAP_MM, at: { x: 0, y: firstBaseline + i * LINE_PITCH_MM }, maxWidthMm }),
  );
  const drawing = letterings.map(({ path }) => ({ kind: 'path', path, colour: BLACK }) as const);
  const inks = letterings.flatMap(({ boxMm }) => boxMm ?? []);
  const left = Math.min(0, ...inks.map(({ x }) => x));
  const top = Math.min(0, ...inks.map(({ y }) => y));
  const right = Math.max(
    0,
    ...letterings.map(({ widthMm }) => widthMm),
    ...inks.map(({ x, width }) => x + width),
  );
  const foot = Math.max(
    firstBaseline + (lines.length - 1) * LINE_PITCH_MM + CAP_MM * DESCENT_SHARE,
    ...inks.map(({ y, height }) => y + height),
  );
  return {
    widthMm: right - left,
    heightMm: foot - top,
    drawing: moveDrawing(drawing, { by: { x: -left, y: -top } }),
  };
}

/** A picture with its words below it. */
export function withCaption(picture: MarkBlock, lines: readonly string[]): MarkBlock {
  if (lines.length === 0) return picture;
  const caption = textBlock(lines);
  const below = picture.heightMm + CAPTION_GAP_MM;
  return {
    ...picture,
    widthMm: Math.max(picture.widthMm, caption.widthMm),
    heightMm: below + caption.heightMm,
    drawing: [...picture.drawing, ...moveDrawing(caption.drawing, { by: { x: 0, y: below } })],
  };
}

const CAPTION_GAP_MM = 0.6;
