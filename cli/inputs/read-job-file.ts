import { resolve } from 'node:path';
import { BlankcheckError, type ReadSheetJob, readSheetJob } from '../../src/index.ts';
import { notThere } from './not-there.ts';
import { readFileBounded, whyUnusable } from './read-bounded.ts';
import { isNamedFileThere } from './read-named-file.ts';

/** A job of a thousand pieces has some hundred thousand characters; a file far larger is something else (own choice). */
const MAX_JOB_BYTES = 4_000_000;

/** The job of a file. @throws BlankcheckError `no-such-file`, `bad-job`. */
export async function readJobFile(word: string, cwd: string, signal: AbortSignal): Promise<ReadSheetJob> {
  let bytes: Uint8Array;
  const path = resolve(cwd, word);
  if (!(await isNamedFileThere(path))) throw notThere(`job file "${word}"`);
  try {
    bytes = await readFileBounded(path, signal, MAX_JOB_BYTES);
  } catch (cause) {
    if (!(cause instanceof BlankcheckError)) throw cause;
    throw new BlankcheckError(
      cause.code === 'too-many-bytes' ? 'bad-job' : 'no-such-file',
      `The job file "${word}" cannot be used: ${whyUnusable(cause)}.\nMend that, or name the file of one job as JSON.`,
      { cause },
    );
  }
  let text: string;
  try {
    text = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes);
  } catch (cause) {
    throw new BlankcheckError(
      'bad-job',
      `The job file "${word}" is no text in UTF-8.\nExpected one job as JSON, with or without comments.`,
      { cause },
    );
  }
  return readSheetJob(text, word);
}
