import { resolve } from 'node:path';
import {
  BlankcheckError,
  type BlankRecord,
  findBestSettings,
  type PagePiece,
  pageHead,
  pressCard,
  renderPressCard,
  renderPressPage,
  toPressCardJson,
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
import { readPlacing } from './read-request.ts';
import { viewPieceForCard } from './view-piece-for-card.ts';

/**
 * `press`: the press card of one blank, with the maker's own best settings where a ledger knows them, and of one piece where
 * `--art` names it. Returns 1 where lines of that ledger are no records, the art cannot be read, or the page not be written. @throws BlankcheckError of kind `usage`.
 */
export async function printPressCard(
  words: readonly string[],
  options: TypedOptions,
  io: Io,
  temps: TempFiles,
): Promise<number> {
  const { stdout, stderr, env, cwd, interrupt } = io;
  const [word, ...more] = words;
  if (word === undefined)
    throw new BlankcheckError('missing-blank', 'No blank was given.\nSuch as blankcheck press mug-11oz.');
  if (more.length > 0)
    throw new BlankcheckError('bad-option', `Expected one blank, received ${words.length}.`);
  const blank = await findBlankByWord(word, cwd, io.interrupt);
  const card = pressCard(blank);
  const piece = await viewPiece(blank, options, io);
  if (piece instanceof BlankcheckError) {
    printError(stderr, piece);
    return 1;
  }
  const ledger = await readLedgerFile(options.ledger, cwd, interrupt);
  const own = ledger && findBestSettings(ledger.entries, blank.id);
  const report = piece?.report ?? null;
  if (options.json) stdout.write(toPressCardJson(card, own, report));
  else stdout.write(renderPressCard(card, describeTerminal(stdout, env, options), own, report));
  // Even by force: neither the ledger, a blank's record nor the art may be lost to a page.
  const read = [
    word,
    options.ledger ?? DEFAULT_LEDGER,
    ...(options.art === undefined ? [] : [options.art]),
  ].map((name) => ({ kind: 'file', file: resolve(cwd, name) }) as const);
  const unmade =
    options.page === undefined
      ? null
      : await publishDocument(
          {
            path: options.page,
            option: '--page',
            head: pageHead('press card'),
            text: renderPressPage(card, own, piece),
          },
          { cwd, force: options.force === true, temps, guard: createInputGuard(read) },
        );
  if (unmade) printError(stderr, unmade);
  if (!ledger) return unmade ? 1 : 0;
  tellBadLines(ledger, options.ledger, stderr);
  return unmade || ledger.faults.length > 0 ? 1 : 0;
}

/** null where no art is named; why it cannot be read, where it cannot. */
async function viewPiece(
  blank: BlankRecord,
  options: TypedOptions,
  io: Io,
): Promise<PagePiece | BlankcheckError | null> {
  if (options.art === undefined) {
    const [placing] = Object.keys(readPlacing(options));
    if (placing === undefined) return null;
    throw new BlankcheckError('bad-option', 'Art is to be placed, and none was named.\nName it with --art.');
  }
  try {
    return await viewPieceForCard(blank, options.art, options, io);
  } catch (error) {
    if (error instanceof BlankcheckError && error.kind === 'artwork') return error;
    throw error;
  }
}
