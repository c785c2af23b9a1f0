import type { InkColour } from '../../geometry/drawing.ts';

/** How marks look and keep their distance; all of it common practice or our own choice, no source. */
export const BLACK: InkColour = { r: 0, g: 0, b: 0 };

export const LINE_MM = 0.25;
/** Height of capitals that a person must read. */
export const CAP_MM = 2;
/** From baseline to baseline. */
export const LINE_PITCH_MM = 3.4;
/** Below a baseline: the tails of g and y, in shares of the height of capitals. */
export const DESCENT_SHARE = 0.35;
/** Above a capital: the accents of É and Å, in shares of its height. */
export const ACCENT_SHARE = 0.4;

/** Every mark keeps this far from every bleed. */
export const BLEED_GAP_MM = 2;
/** And from every other mark. */
export const MARK_GAP_MM = 1.5;
