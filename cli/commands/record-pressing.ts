import { resolve } from 'node:path';
import {
  BlankcheckError,
  escapeJsonText,
  findPressingFaults,
  showHidden,
  writePressing,
} from '../../src/index.ts';
import type { TypedOptions } from '../arguments.ts';
import { printError } from '../errors.ts';
import type { Origin } from '../inputs/planned-artwork.ts';
import { DEFAULT_LEDGER } from '../inputs/read-ledger-file.ts';
import { readPressing } from '../inputs/read-pressing.ts';
import type { Io } from '../io.ts';
import { appendLine } from '../output/append-line.ts';
import { createInputGuard } from '../output/input-guard.ts';
import { refuseForeignLedger } from '../output/refuse-foreign-ledger.ts';

/**
 * `record`: adds what was pressed to the ledger. Returns 0, or 1 where the ledger cannot be written.
 * @throws BlankcheckError of kind `usage`.
 */
export async function recordPressing(
  words: readonly string[],
  options: TypedOptions,
  { cwd, interrupt: signal, stdout, stderr }: Io,
): Promise<number> {
  if (words.length > 0)
    throw new BlankcheckError(
      'bad-option',
      `Expected no word, received "${words[0]}".\nName the art with --art.`,
    );
  const told = options.ledger ?? DEFAULT_LEDGER;
  const pressing = await readPressing(options, new Date(), cwd, signal);
  const faults = await findPressingFaults(pressing);
  if (faults !== null) throw new BlankcheckError('bad-option', `This cannot be recorded: ${faults}.`);
  signal.throwIfAborted();
  const path = resolve(cwd, told);
  try {
    await createInputGuard(listRead(options, cwd)).refuseAppending(path, told, '--ledger');
    await refuseForeignLedger(path, told);
    await appendLine(path, told, writePressing(pressing));
  } catch (error) {
    if (!(error instanceof BlankcheckError) || error.kind === 'usage') throw error;
    printError(stderr, error);
    return 1;
  }
  if (pressing.photo?.sha256 === null)
    stderr.write(
      showHidden(
        `Note: the photo "${pressing.photo.file}" cannot be read; its name was recorded all the same.`,
      ).concat('\n'),
    );
  stdout.write(
    options.json
      ? escapeJsonText(`${JSON.stringify({ ledger: told, ...pressing }, null, 2)}\n`)
      : `${showHidden(told)}\n`,
  );
  return 0;
}

/** The files that a recording reads; a word that names none has no identity either. */
function listRead({ blank, art, photo, printer }: TypedOptions, cwd: string): readonly Origin[] {
  return [blank, art, photo, printer].flatMap((word) =>
    word === undefined ? [] : [{ kind: 'file', file: resolve(cwd, word) }],
  );
}
