import {
  BlankcheckError,
  escapeJsonText,
  renderPressings,
  renderPressingsCsv,
  searchPressings,
} from '../../src/index.ts';
import type { TypedOptions } from '../arguments.ts';
import { DEFAULT_LEDGER, readLedgerFile, tellBadLines } from '../inputs/read-ledger-file.ts';
import type { Io } from '../io.ts';
import { describeTerminal } from '../terminal.ts';

/**
 * `history`: what was pressed and how it came out, what worked first. That nothing fits is an answer, not an error.
 * Returns 1 where lines of the ledger are no records; the others are shown all the same.
 * @throws BlankcheckError of kind `usage`.
 */
export async function showHistory(
  words: readonly string[],
  options: TypedOptions,
  { cwd, interrupt: signal, stdout, stderr, env }: Io,
): Promise<number> {
  const { ledger: file, json, csv } = options;
  if (json && csv) throw new BlankcheckError('bad-option', 'Expected --json or --csv, received both.');
  const ledger = await readLedgerFile(file, cwd, signal);
  if (ledger === null)
    stderr.write(`Nothing was recorded in this folder yet (${DEFAULT_LEDGER} is not there).\n`);
  const { entries, faults } = ledger ?? { entries: [], faults: [] };
  const found = searchPressings(entries, words);
  if (json)
    stdout.write(
      escapeJsonText(
        `${JSON.stringify({ schemaVersion: 1, pressings: found.map(({ line, pressing }) => ({ line, ...pressing })), badLines: faults }, null, 2)}\n`,
      ),
    );
  else if (csv) stdout.write(renderPressingsCsv(found));
  else stdout.write(renderPressings(found, describeTerminal(stdout, env, options)));
  if (ledger && found.length === 0) stderr.write(`None of ${entries.length} records fits.\n`);
  if (ledger) tellBadLines(ledger, file, stderr);
  return faults.length > 0 ? 1 : 0;
}
