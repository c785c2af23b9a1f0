import { resolve } from 'node:path';
import {
  BlankcheckError,
  badCondition,
  listConditionIds,
  loadCondition,
  MAX_CONDITION_BYTES,
  type PrintingCondition,
  readCondition,
} from '../../src/index.ts';
import { whyUnusable } from './read-bounded.ts';
import { isNamedFileThere, readNamedFile } from './read-named-file.ts';

/**
 * The printing condition that a word stands for: an id of the seeds, or the ICC profile of a printer.
 * @throws BlankcheckError `bad-condition`, `no-such-file`; the signal's reason when it was aborted
 */
export async function findConditionByWord(
  word: string,
  cwd: string,
  signal: AbortSignal,
): Promise<PrintingCondition> {
  if (listConditionIds().includes(word)) return loadCondition(word);
  const path = resolve(cwd, word);
  if (!(await isNamedFileThere(path))) {
    if (!/\.ic[cm]$/i.test(word)) return loadCondition(word);
    throw new BlankcheckError(
      'no-such-file',
      `The profile "${word}" is not there.\nSee --condition in --help.`,
    );
  }
  return readCondition(await readProfileFile(path, word, signal), word);
}

async function readProfileFile(path: string, word: string, signal: AbortSignal): Promise<Uint8Array> {
  try {
    return await readNamedFile(path, signal, MAX_CONDITION_BYTES);
  } catch (cause) {
    if (!(cause instanceof BlankcheckError)) throw cause;
    throw badCondition(word, whyUnusable(cause), { cause });
  }
}
