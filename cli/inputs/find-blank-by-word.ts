import { readFile, stat } from 'node:fs/promises';
import { resolve } from 'node:path';
import {
  BlankcheckError,
  type BlankRecord,
  blankFromSize,
  findBlank,
  findTooDeep,
  looksLikeSize,
  MAX_JSON_DEPTH,
  nearestBlankIds,
  readBlankRecord,
} from '../../src/index.ts';
import { readFileBounded } from './read-bounded.ts';

const NEVER = new AbortController().signal;

/**
 * The blank that a word stands for: an id of the catalogue, a size, or a JSON file with one record.
 * @throws BlankcheckError `unknown-blank`, `no-such-file`, `bad-blank-record`, and as `blankFromSize`.
 */
export async function findBlankByWord(
  word: string,
  cwd: string,
  signal: AbortSignal = NEVER,
): Promise<BlankRecord> {
  // Ids are written small; people write them as they like.
  const known = findBlank(word.toLowerCase());
  if (known) return known;
  if (looksLikeSize(word)) return blankFromSize(word);
  const text = await readText(word, cwd, signal);
  if (text === null) throw unknownBlank(word);
  return readBlankRecord(parseJson(text, word), word);
}

/** What to say of a word that is no blank, with the ids that may have been meant. */
function unknownBlank(word: string): BlankcheckError {
  const near = nearestBlankIds(word, 3);
  return new BlankcheckError(
    'unknown-blank',
    `Unknown blank "${word}".\n` +
      (near.length > 0 ? `Did you mean ${near.join(', ')}? ` : '') +
      'See blankcheck blanks for the catalogue, or give a size such as 200x200mm.',
  );
}

/** null where no file is meant: the word neither names one nor is spelt like one. */
async function readText(word: string, cwd: string, signal: AbortSignal): Promise<string | null> {
  const path = resolve(cwd, word);
  try {
    const isPipe = (await stat(path)).isFIFO();
    return isPipe
      ? new TextDecoder().decode(await readFileBounded(path, signal))
      : await readFile(path, 'utf8');
  } catch (cause) {
    signal.throwIfAborted();
    if (!/\.json$/i.test(word)) return null;
    const reason = cause instanceof Error ? cause.message.replace(/,.*$/, '') : String(cause);
    throw new BlankcheckError('no-such-file', `The blank file "${word}" cannot be read: ${reason}.`, {
      cause,
    });
  }
}

function parseJson(text: string, where: string): unknown {
  if (findTooDeep(text) !== null)
    throw new BlankcheckError(
      'bad-blank-record',
      `"${where}" has more than ${MAX_JSON_DEPTH} lists and objects within each other.\nExpected one record of the shape of seeds/blanks.json.`,
    );
  try {
    return JSON.parse(text.replace(/^\ufeff/, ''));
  } catch (cause) {
    const reason = cause instanceof Error ? cause.message : String(cause);
    throw new BlankcheckError(
      'bad-blank-record',
      `"${where}" is no JSON: ${reason}.\nExpected one record of the shape of seeds/blanks.json.`,
      { cause },
    );
  }
}
