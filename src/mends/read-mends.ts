import { BlankcheckError } from '../blankcheck-error.ts';
import { nearestIds } from '../catalogue/nearest-ids.ts';
import { MENDS } from './index.ts';

/** Stands for every mend that takes away only what nobody would miss. */
export const GENTLE = 'gentle';

/** Named for later; until then they are refused as what they are, not as mistakes. */
const LATER = ['lift-shadows', 'free-shadow'];

/**
 * The ids in a list such as `drop-strays, into-gamut`, each once, in the order in which they are carried out.
 * @throws BlankcheckError `unknown-mend`, `not-built-yet`
 */
export function readMends(text: string): readonly string[] {
  const words = text
    .split(',')
    .map((word) => word.trim().toLowerCase())
    .filter((word) => word !== '');
  if (words.length === 0) throw unknown(text);
  const asked = new Set(words.flatMap((word) => (word === GENTLE ? listGentle() : [readOne(word)])));
  return MENDS.map(({ id }) => id).filter((id) => asked.has(id));
}

function listGentle(): readonly string[] {
  const gentle = MENDS.filter((mend) => mend.gentle).map(({ id }) => id);
  if (gentle.length === 0) throw notBuiltYet(GENTLE);
  return gentle;
}

function readOne(word: string): string {
  if (MENDS.some(({ id }) => id === word)) return word;
  throw LATER.includes(word) ? notBuiltYet(word) : unknown(word);
}

function notBuiltYet(word: string): BlankcheckError {
  return new BlankcheckError('not-built-yet', `--mend ${word} is not built yet.\nName ${listNames()}.`);
}

function unknown(word: string): BlankcheckError {
  const near = nearestIds(word, [...MENDS.map(({ id }) => id), GENTLE], 3);
  const hint = near.length > 0 ? `Did you mean ${near.join(', ')}? ` : '';
  return new BlankcheckError(
    'unknown-mend',
    `Expected mends after --mend, received "${word}".\n${hint}Name one or more of ${listNames()}, with commas between them.`,
  );
}

function listNames(): string {
  const names = MENDS.map(({ id }) => id);
  return (MENDS.some(({ gentle }) => gentle) ? [...names, GENTLE] : names).join(', ');
}
