import { stat } from 'node:fs/promises';
import { BlankcheckError, readLedger } from '../../src/index.ts';
import { readHead } from '../inputs/read-bounded.ts';

/** How every line of a ledger begins that was written here, whatever its version, and what a crash left of one. */
const LINE_START = /^\{"schemaVersion":\d+,"at"/;
const WHOLE_START = '{"schemaVersion":1,"at"';

/**
 * A mistyped name must not get a line of JSON at its end. A file that is not there, or is empty, is a ledger to be; a bad
 * line among good ones stays one.
 * @throws BlankcheckError `bad-ledger` where nothing in the first 64 KiB is a line of a ledger
 */
export async function refuseForeignLedger(path: string, told: string): Promise<void> {
  const isFile = await stat(path).then(
    (stats) => stats.isFile(),
    () => false,
  );
  if (!isFile) return;
  const head = new TextDecoder().decode(await readHead(path)).trimStart();
  if (LINE_START.test(head) || WHOLE_START.startsWith(head.trimEnd())) return;
  if ((await readLedger(head)).entries.length > 0) return;
  throw new BlankcheckError(
    'bad-ledger',
    `"${told}" holds something else than a ledger, and nothing was added to it.\nGive the ledger, or a file that is not there yet, with --ledger.`,
  );
}
