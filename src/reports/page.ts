import { styleText } from 'node:util';
import wrapAnsi from 'wrap-ansi';

/** How a text for a terminal is set. Both are decided by the caller, once; reports never ask the environment. */
export interface Page {
  readonly colour: boolean;
  /** Columns of the terminal; lines are set in 40 to 100 of them, since longer ones are hard to read. */
  readonly width: number;
}

const STYLES = {
  stop: ['bold', 'red'],
  look: ['bold', 'yellow'],
  note: ['bold', 'cyan'],
  ready: ['bold', 'green'],
  strong: ['bold'],
  quiet: ['dim'],
} as const;

export type Style = keyof typeof STYLES;

/** The text in a style, or as it is on a page without colour. Nothing is told by colour alone. */
export function paint(text: string, style: Style, page: Page): string {
  // The stream is not asked: whether there is colour was decided by the caller.
  return page.colour ? styleText([...STYLES[style]], text, { validateStream: false }) : text;
}

/**
 * The text wrapped to the page behind a label, its further lines indented to where it began. `label` is plain and
 * printable ASCII; wide characters count as two columns, a word longer than the line is broken, and no line ends
 * between a number and its unit.
 */
export function hang(label: string, text: string, page: Page, style?: Style): readonly string[] {
  const columns = Math.min(Math.max(page.width || 0, 40), 100) - label.length;
  const lines = wrapAnsi(text.replace(MEASURE_SPACE, NO_BREAK), columns, { hard: true }).split('\n');
  return lines.map((line, index) => {
    const lead = index > 0 ? ' '.repeat(label.length) : style ? paint(label, style, page) : label;
    return `${lead}${line.replaceAll(NO_BREAK, ' ')}`.trimEnd();
  });
}

const NO_BREAK = '\u00a0';

/** The spaces within `7.87 in`, `300 ppi`, `100 %` and `200 x 150`. */
const MEASURE_SPACE = /(?<=\d) (?=(?:mm|in|px|ppi|%)(?!\p{L}))|(?<=\d) (?=x \d)|(?<=\d x) (?=\d)/gu;
