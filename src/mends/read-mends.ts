import { BlankcheckError } from '../blankcheck-error.ts';
import { nearestIds } from '../catalogue/nearest-ids.ts';
import { MENDS } from './index.ts';

/** Stands for every mend that takes away only what nobody would miss. */
const GENTLE = 'gentle';

/**
 * The ids in a list such as `drop-strays, into-gamut`, each once, in the order in which they are carried out.
 * @throws BlankcheckError `unknown-mend`
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
  return MENDS.filter((mend) => mend.gentle).map(({ id }) => id);
}

function readOne(word: string): string {
  if (MENDS.some(({ id }) => id === word)) return word;
  throw unknown(word);
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
  return [...MENDS.map(({ id }) => id), GENTLE].join(', ');
}
