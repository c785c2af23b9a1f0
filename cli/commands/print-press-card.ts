import { resolve } from 'node:path';
import {
  BlankcheckError,
  findBestSettings,
  pageHead,
  pressCard,
  renderPressCard,
  renderPressPage,
} from '../../src/index.ts';
import type { TypedOptions } from '../arguments.ts';
import { printError } from '../errors.ts';
import { findBlankByWord } from '../inputs/find-blank-by-word.ts';
import { DEFAULT_LEDGER, readLedgerFile, tellBadLines } from '../inputs/read-ledger-file.ts';
import type { Io } from '../io.ts';
import { createInputGuard } from '../output/input-guard.ts';
import { publishDocument } from '../output/publish-document.ts';
import type { TempFiles } from '../output/temp-files.ts';
import { describeTerminal } from '../terminal.ts';

/**
 * `press`: the press card of one blank, with the maker's own best settings where a ledger knows them. Returns 1 where lines
 * of that ledger are no records, or the page could not be written. @throws BlankcheckError of kind `usage`.
 */
export async function printPressCard(
  words: readonly string[],
  options: TypedOptions,
  { stdout, stderr, env, cwd, interrupt }: Io,
  temps: TempFiles,
): Promise<number> {
  const [word, ...more] = words;
  if (word === undefined)
    throw new BlankcheckError('missing-blank', 'No blank was given.\nSuch as blankcheck press mug-11oz.');
  if (more.length > 0)
    throw new BlankcheckError('bad-option', `Expected one blank, received ${words.length}.`);
  const blank = await findBlankByWord(word, cwd);
  const card = pressCard(blank);
  const ledger = await readLedgerFile(options.ledger, cwd, interrupt);
  const own = ledger && findBestSettings(ledger.entries, blank.id);
  if (options.json) stdout.write(`${JSON.stringify({ schemaVersion: 1, ...card, own }, null, 2)}\n`);
  else stdout.write(renderPressCard(card, describeTerminal(stdout, env, options), own));
  // Even by force: neither the ledger nor a blank's record may be lost to a page.
  const read = [word, options.ledger ?? DEFAULT_LEDGER].map(
    (name) => ({ kind: 'file', file: resolve(cwd, name) }) as const,
  );
  const unmade =
    options.page === undefined
      ? null
      : await publishDocument(
          {
            path: options.page,
            option: '--page',
            head: pageHead('press card'),
            text: renderPressPage(card, own),
          },
          { cwd, force: options.force === true, temps, guard: createInputGuard(read) },
        );
  if (unmade) printError(stderr, unmade);
  if (!ledger) return unmade ? 1 : 0;
  tellBadLines(ledger, options.ledger, stderr);
  return unmade || ledger.faults.length > 0 ? 1 : 0;
}
