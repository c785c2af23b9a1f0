import type { Drawing, InkColour } from '../geometry/drawing.ts';
import { MM_PER_INCH } from '../geometry/length.ts';
import { letter } from '../lettering/letter.ts';
import { measureText } from '../lettering/measure-text.ts';

/** A caption set in lines, in mm from its top left. */
export interface SetCaption {
  readonly drawing: Drawing;
  readonly heightMm: number;
}

const BLACK: InkColour = { r: 0, g: 0, b: 0 };
/** Capitals that can be read on paper at arm's length, and on a screen at any resolution of the proof (own choice). */
const CAPITALS_MM = 2;
const CAPITALS_PX = 9;
/** In heights of a capital (own choice). */
const HEADING = 1.6;
const LEAD = 2;
const BORDER = 1;
const LEAST_WIDTH = 34;

/** Height of the caption's capitals in a picture of so many pixels per inch. */
export function capitalsMm(ppi: number): number {
  return Math.max(CAPITALS_MM, (CAPITALS_PX / ppi) * MM_PER_INCH);
}

/** The width below which a caption would be all line breaks. */
export function leastCaptionMm(capitals: number): number {
  return capitals * LEAST_WIDTH;
}

/** The lines in black, broken between words where they are wider than `widthMm`; the first one larger. */
export function setCaption(lines: readonly string[], widthMm: number, capitals: number): SetCaption {
  const room = widthMm - 2 * BORDER * capitals;
  const set = lines.flatMap((line, index) => {
    const size = index === 0 ? capitals * HEADING : capitals;
    return breakLine(line, size, room).map((text) => ({ text, size }));
  });
  let y = BORDER * capitals;
  const drawing = set.map(({ text, size }) => {
    const baseline = { x: BORDER * capitals, y: y + size };
    y += size * LEAD;
    const { path } = letter(text, { capHeightMm: size, at: baseline, maxWidthMm: room });
    return { kind: 'path', path, colour: BLACK } as const;
  });
  return { drawing, heightMm: y };
}

/** A word that is too long for a line by itself has one, and is shortened there. */
function breakLine(text: string, capHeightMm: number, room: number): readonly string[] {
  const lines: string[] = [];
  for (const word of text.split(' ')) {
    const longer = lines.length === 0 ? word : `${lines.at(-1)} ${word}`;
    if (lines.length > 0 && measureText(longer, capHeightMm) <= room) lines[lines.length - 1] = longer;
    else lines.push(word);
  }
  return lines;
}
