import { BlankcheckError } from '../blankcheck-error.ts';
import { findSheet, listRolls, listSheets } from '../catalogue/find-sheet.ts';
import { nearestIds } from '../catalogue/nearest-ids.ts';
import { formatMillimetres, parsePositiveLength } from '../geometry/length.ts';
import { looksLikeSize, parseSize } from '../geometry/size.ts';
import type { Paper } from './paper.ts';

/** The longest side of a page that every PDF reader takes, 14,400 units of 1/72 in. @see ISO 32000-1:2008, annex C.2 */
export const MAX_PAGE_MM = 5080;
const NAMES_OFFERED = 3;

/**
 * The paper of `--sheet`: an id or alias of the seeds (`a4`, `a3+`), a size (`200x300mm`), or a roll by its width
 * (`roll:24in`, `roll-24in`).
 * @throws BlankcheckError `unknown-sheet` with the nearest names, `bad-size` or a code of lengths for a size that is none.
 */
export function parsePaper(word: string): Paper {
  const text = word.trim();
  const sheet = findSheet(text);
  if (sheet) return { id: sheet.id, widthMm: sheet.widthMm, heightMm: sheet.heightMm };
  const roll = listRolls().find(({ id }) => id === text.toLowerCase());
  if (roll) return { id: roll.id, widthMm: roll.widthMm, heightMm: null };
  if (/^roll:/i.test(text)) {
    const widthMm = parsePositiveLength(text.slice('roll:'.length), '--sheet');
    return checkSides({ id: `roll-${formatMillimetres(widthMm).replace(' ', '')}`, widthMm, heightMm: null });
  }
  if (looksLikeSize(text)) {
    const { kind, widthMm, heightMm } = parseSize(text, '--sheet');
    if (kind === 'round')
      throw new BlankcheckError('bad-size', `Expected two sides for --sheet, received "${word}".`);
    const [short, long] = [Math.min(widthMm, heightMm), Math.max(widthMm, heightMm)];
    return checkSides({ id: text.replace(/\s/g, ''), widthMm: short, heightMm: long });
  }
  throw unknownSheet(word);
}

function checkSides(paper: Paper): Paper {
  const longest = Math.max(paper.widthMm, paper.heightMm ?? 0);
  if (longest <= MAX_PAGE_MM) return paper;
  throw new BlankcheckError(
    'bad-size',
    `Expected at most ${formatMillimetres(MAX_PAGE_MM)} for a side of --sheet, received ${formatMillimetres(longest)}.`,
  );
}

function unknownSheet(word: string): BlankcheckError {
  const names = listSheets().flatMap(({ id, aliases = [] }) => [id, ...aliases]);
  const near = nearestIds(word, [...names, ...listRolls().map(({ id }) => id)], NAMES_OFFERED);
  const offer = near.length > 0 ? `Did you mean ${near.join(', ')}? ` : '';
  return new BlankcheckError(
    'unknown-sheet',
    `Unknown sheet "${word}".\n${offer}Sheets are ${names.join(', ')}, a size such as 200x300mm, or a roll by its width such as roll:24in.`,
  );
}
