import { resolve } from 'node:path';
import { BlankcheckError, type Ledger, readLedger, showHidden } from '../../src/index.ts';
import type { TextStream } from '../io.ts';
import { isTaken } from '../output/is-taken.ts';
import { notThere } from './not-there.ts';
import { readFileBounded, whyUnusable } from './read-bounded.ts';
import { isNamedFileThere } from './read-named-file.ts';

export const DEFAULT_LEDGER = 'blankcheck-ledger.jsonl';

/** A ledger of a lifetime: a million pieces (own choice; Node itself ends at 512 MB of text). */
const MAX_LEDGER_BYTES = 400_000_000;

/** More bad lines than this are counted only. */
const MOST_TOLD = 20;

/**
 * The ledger of `--ledger`, or that of the current folder; null where the latter is not there yet. Bytes that are no
 * UTF-8 are replaced, so that they spoil their own line at most. @throws BlankcheckError `no-such-file`, `bad-ledger`.
 */
export async function readLedgerFile(
  word: string | undefined,
  cwd: string,
  signal: AbortSignal,
): Promise<Ledger | null> {
  const path = resolve(cwd, word ?? DEFAULT_LEDGER);
  if (word === undefined && !(await isTaken(path))) return null;
  if (word !== undefined && !(await isNamedFileThere(path))) throw notThere(`ledger "${word}"`);
  try {
    return await readLedger(new TextDecoder().decode(await readFileBounded(path, signal, MAX_LEDGER_BYTES)));
  } catch (cause) {
    if (!(cause instanceof BlankcheckError)) throw cause;
    throw new BlankcheckError(
      'bad-ledger',
      `The ledger "${word ?? DEFAULT_LEDGER}" cannot be used: ${whyUnusable(cause)}.\nMend that, or name another with --ledger.`,
      { cause },
    );
  }
}

/** Names the lines that are no records; they stay in the file. */
export function tellBadLines({ faults }: Ledger, told: string | undefined, stderr: TextStream): void {
  for (const { line, message } of faults.slice(0, MOST_TOLD))
    stderr.write(
      `${showHidden(`blankcheck: ${told ?? DEFAULT_LEDGER}, line ${line}: ${message} [bad-line]`)}\n`,
    );
  const more = faults.length - MOST_TOLD;
  if (more > 0) stderr.write(`blankcheck: and ${more} more bad lines\n`);
}
