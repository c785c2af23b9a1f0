import type { Path } from '../../geometry/path.ts';
import { letter } from '../../lettering/letter.ts';
import { measureText } from '../../lettering/measure-text.ts';
import { decimal, shown } from '../html/markup.ts';
import { showHidden } from '../visible-text.ts';

/** Lines of a text between words, as outlines; `d` of each begins at the left of its baseline. Lengths are pixels. */
export interface SetLines {
  readonly markup: string;
  /** Where the next text may begin. */
  readonly bottom: number;
}

export interface Setting {
  readonly x: number;
  /** Top of the first line's capitals. */
  readonly y: number;
  readonly capitals: number;
  readonly width: number;
  readonly kind: string;
  /** More is cut, and says so. */
  readonly mostLines: number;
}

/** From baseline to baseline, in heights of a capital (own choice). */
const LEAD = 1.9;

/** A text set as outlines, so that no machine's fonts matter; nothing in it hides or reorders what is read. */
export function setLines(text: string, { x, y, capitals, width, kind, mostLines }: Setting): SetLines {
  const visible = showHidden(text);
  // A line that must be one is shortened in its middle.
  const all = mostLines === 1 ? [visible] : breakLines(visible, capitals, width);
  const lines =
    all.length > mostLines
      ? [...all.slice(0, mostLines - 1), cutOff(all[mostLines - 1]!, capitals, width)]
      : all;
  const paths = lines.map((line, index) => {
    const at = { x, y: y + capitals * (1 + index * LEAD) };
    const { path } = letter(line, { capHeightMm: capitals, at, maxWidthMm: width });
    return `<path class="${shown(kind)}" d="${pathData(path)}"/>`;
  });
  return { markup: paths.join(''), bottom: y + capitals * (1 + (lines.length - 1) * LEAD + 0.9) };
}

function breakLines(text: string, capitals: number, width: number): readonly string[] {
  const lines: string[] = [];
  for (const word of text.split(/\s+/)) {
    const longer = lines.length === 0 ? word : `${lines.at(-1)} ${word}`;
    if (lines.length > 0 && measureText(longer, capitals) <= width) lines[lines.length - 1] = longer;
    else lines.push(word);
  }
  return lines;
}

/** The line with a mark that it goes on, in the room of the line: whole words give way. */
function cutOff(line: string, capitals: number, width: number): string {
  const words = line.split(' ');
  while (words.length > 1 && measureText(`${words.join(' ')} …`, capitals) > width) words.pop();
  return `${words.join(' ')} …`;
}

export function pathData(path: Path): string {
  return path.map(([command, ...numbers]) => `${command}${numbers.map(decimal).join(' ')}`).join('');
}
