import { stat } from 'node:fs/promises';
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
import { notThere } from './not-there.ts';
import { whyUnusable } from './read-bounded.ts';
import { isNamedFileThere, readNamedFile } from './read-named-file.ts';

/** A record has some hundred characters; a file far larger is something else (own choice). */
const MAX_BLANK_BYTES = 1_000_000;

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
  const isSpeltSo = /\.json$/i.test(word);
  if (!isSpeltSo && (await isFolder(path))) return null;
  if (!(await isNamedFileThere(path))) {
    if (!isSpeltSo) return null;
    throw notThere(`blank file "${word}"`);
  }
  try {
    return new TextDecoder().decode(await readNamedFile(path, signal, MAX_BLANK_BYTES));
  } catch (cause) {
    if (!(cause instanceof BlankcheckError)) throw cause;
    throw new BlankcheckError(
      cause.code === 'too-many-bytes' ? 'bad-blank-record' : 'no-such-file',
      `The blank file "${word}" cannot be used: ${whyUnusable(cause)}.\nMend that, or name the file of one record of the shape of seeds/blanks.json.`,
      { cause },
    );
  }
}

async function isFolder(path: string): Promise<boolean> {
  return stat(path).then(
    (stats) => stats.isDirectory(),
    () => false,
  );
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
