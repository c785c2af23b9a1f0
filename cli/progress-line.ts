import { showHidden } from '../src/index.ts';

const BAR_CELLS = 20;
/** The first wide character of all. @see Unicode UAX #11, East Asian Width */
const FIRST_WIDE = 0x1100;

/** One line of at most so many columns: each word whole or not at all, since "1 of 1" is not "1 of 13"; then the bar, then a name. */
export function drawProgress(
  [first = '', ...more]: readonly string[],
  { total, done, current }: { readonly total: number; readonly done: number; readonly current: string },
  columns: number,
): string {
  let text = cutToColumns(first, columns);
  for (const word of more) if (`${text}, ${word}`.length <= columns) text += `, ${word}`;
  const bar = total === 0 ? '' : `${drawBar(done / total)} `;
  const line = bar.length + text.length <= columns ? `${bar}${text}` : text;
  return current === '' ? line : cutToColumns(`${line}  ${showHidden(current)}`, columns).trimEnd();
}

function drawBar(share: number): string {
  const filled = Math.floor(share * BAR_CELLS);
  return `[${'#'.repeat(filled)}${'.'.repeat(BAR_CELLS - filled)}]`;
}

/**
 * As much of a text as surely fits: of what may be wide each counts as two columns, marks and joiners too, since terminals
 * do not agree on them. A line that is too long would wrap, and only its last row be cleared.
 */
function cutToColumns(text: string, columns: number): string {
  let [cut, used] = ['', 0];
  for (const char of text) {
    used += char.codePointAt(0)! < FIRST_WIDE ? 1 : 2;
    if (used > columns) break;
    cut += char;
  }
  return cut;
}
