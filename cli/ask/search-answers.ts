import {
  type BlankRecord,
  blankFromSize,
  formatLength,
  listBlanks,
  looksLikeSize,
  parsePositiveLength,
  searchBlanks,
  sizeInWords,
} from '../../src/index.ts';
import type { Choice } from './asker.ts';

/** Blanks of the catalogue that the words fit, best first; the blank of a size, or of a file, where one was typed. */
export function searchBlankAnswers(typed: string): readonly Choice[] {
  if (typed === '') return listBlanks().map(answerOf);
  const own = ownBlank(typed);
  return [...(own ? [own] : []), ...searchBlanks([typed]).map(answerOf)];
}

function answerOf(blank: BlankRecord): Choice {
  return { value: blank.id, label: blank.name, hint: `${blank.id}, ${sizeInWords(blank)}` };
}

function ownBlank(typed: string): Choice | null {
  if (/\.json$/i.test(typed)) return { value: typed, label: `the blank in the file ${typed}` };
  if (!looksLikeSize(typed)) return null;
  try {
    return { value: typed, label: `a blank of ${blankFromSize(typed).name}` };
  } catch {
    // Half of a size yet, such as "200x".
    return null;
  }
}

/** What the size may be: `inside`, `cover`, or a width with its unit. */
export function searchSizeAnswers(typed: string): readonly Choice[] {
  const widths = (/^\d+(?:\.\d+)?$/.test(typed) ? [`${typed}mm`, `${typed}in`] : [typed]).flatMap(
    widthAnswer,
  );
  const fits = FITS.filter(({ value, label }) => `${value} ${label}`.includes(typed.toLowerCase()));
  return [...widths, ...fits];
}

export const FITS = [
  { value: 'inside', label: 'as large as all of it fits within the safe line' },
  { value: 'cover', label: 'over the whole blank to its bleed; what hangs over is cut' },
] as const satisfies readonly Choice[];

function widthAnswer(typed: string): readonly Choice[] {
  try {
    return [{ value: typed, label: `${formatLength(parsePositiveLength(typed, '--width'))} wide` }];
  } catch {
    return [];
  }
}
