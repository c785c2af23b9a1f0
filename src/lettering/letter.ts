import { findPathBounds, mapPath, type Path } from '../geometry/path.ts';
import type { PointMm, RectMm } from '../geometry/rectangle.ts';
import { movePath, type QuarterTurn, type RigidMove } from '../geometry/rigid-move.ts';
import { capHeightUnits, findGlyph } from './find-glyph.ts';
import { charactersOf, measureText } from './measure-text.ts';
import { shortenText } from './shorten-text.ts';

export interface LetterOptions {
  /** Height of an H. */
  readonly capHeightMm: number;
  /** Where on the baseline the text begins, has its middle or ends, as `anchor` says. */
  readonly at: PointMm;
  /** `start` by default. */
  readonly anchor?: 'start' | 'middle' | 'end';
  /** Clockwise about `at`; 0 by default. */
  readonly turn?: QuarterTurn;
  /** Reversed left-right within its own width, before it is turned: the same room, read in a mirror. */
  readonly mirrored?: boolean;
  /** What is wider is shortened in the middle. */
  readonly maxWidthMm?: number;
}

export interface Lettering {
  /** Filled outlines, in mm, in the frame of `at`; empty for a text without ink. */
  readonly path: Path;
  /** What is drawn: the text, shortened where it had to be. */
  readonly text: string;
  /** Along the baseline, with the room at the sides of the letters. */
  readonly widthMm: number;
  /** Box of all points of the outlines: never smaller than the ink. null for a text without ink. */
  readonly boxMm: RectMm | null;
}

/**
 * A line of text as outlines. Letters stand at their own widths, without kerning: at the sizes of a label it is less
 * than a droplet. A character that the font has not is drawn as a crossed box.
 */
export function letter(text: string, options: LetterOptions): Lettering {
  const { capHeightMm, at, anchor = 'start', turn = 0, mirrored = false, maxWidthMm } = options;
  const drawn = maxWidthMm === undefined ? text : shortenText(text, capHeightMm, maxWidthMm);
  const widthMm = measureText(drawn, capHeightMm);
  const startMm = -widthMm * ANCHOR_SHARE[anchor];
  // Mirrored about its own middle, a text that begins at 0 begins at 0 again.
  const within: RigidMove = mirrored
    ? { mirrored, by: { x: startMm + widthMm, y: 0 } }
    : { by: { x: startMm, y: 0 } };
  const path = movePath(movePath(lineOf(drawn, capHeightMm), within), { turn, by: at });
  return { path, text: drawn, widthMm, boxMm: findPathBounds(path) };
}

const ANCHOR_SHARE = { start: 0, middle: 0.5, end: 1 } as const;

/** The text in mm, from the origin to the right along the line y = 0. */
function lineOf(text: string, capHeightMm: number): Path {
  const mmPerUnit = capHeightMm / capHeightUnits();
  let x = 0;
  return charactersOf(text).flatMap((character) => {
    const { advance, outline } = findGlyph(character);
    const from = x;
    x += advance;
    return mapPath(outline, (point) => ({ x: (point.x + from) * mmPerUnit, y: point.y * mmPerUnit }));
  });
}
