import {
  BlankcheckError,
  listBlanks,
  readArtwork,
  readPrintRecord,
  renderSuits,
  type SuitedArtwork,
  searchBlanks,
  suitArtwork,
  toSuitsJson,
} from '../../src/index.ts';
import type { TypedOptions } from '../arguments.ts';
import { printError, printFault } from '../errors.ts';
import { exitCodeOf } from '../exit-code.ts';
import { planInputs } from '../inputs/plan-inputs.ts';
import { createArtworkReader } from '../inputs/read-artworks.ts';
import { interruptionOf } from '../interrupt.ts';
import type { Io } from '../io.ts';
import { parseLimits } from '../limits.ts';
import { describeTerminal } from '../terminal.ts';
import { walkArtworks } from './walk-artworks.ts';

/**
 * `suits`: for which blanks of the catalogue each artwork is fit. The table is the data here, so it goes to standard
 * output. @throws BlankcheckError of kind `usage`, before anything was read.
 */
export async function suitArtworks(words: readonly string[], options: TypedOptions, io: Io): Promise<number> {
  const { cwd, interrupt: signal, stdout, stderr, env } = io;
  if (words.length === 0)
    throw new BlankcheckError(
      'missing-artwork',
      'No artwork was given.\nName files, folders or ZIP archives, or - for standard input.',
    );
  const among = chooseBlanks(options);
  const limits = parseLimits(options.limit ?? []);
  const plan = await planInputs(words, { cwd, recursive: options.recursive === true, signal });
  const reader = createArtworkReader(io.stdin, signal, limits.maxBytes);
  const results: SuitedArtwork[] = [];
  const walked = await walkArtworks(plan, signal, {
    fault: (path, error) => printFault(stderr, error, path),
    visit: async (planned, named) => {
      const nothing = { path: planned.path, sha256: null, format: null, blanks: [], leftOut: [] };
      let suited: SuitedArtwork;
      try {
        const bytes = await reader.read(planned);
        if (!named && readPrintRecord(bytes)) return false;
        const artwork = await readArtwork(bytes, { limits, signal });
        const { sha256, format } = artwork;
        const suits = suitArtwork(artwork, among);
        const blanks = suits.blanks.filter((suit) => isWanted(suit, options));
        suited = { ...nothing, sha256, format, error: null, ...suits, blanks };
      } catch (error) {
        if (!(error instanceof BlankcheckError) || error.kind !== 'artwork') throw error;
        suited = { ...nothing, error: { code: error.code, message: error.message } };
      }
      results.push(suited);
      return true;
    },
  });
  for (const error of walked.usageErrors) printError(stderr, error);
  if (signal.aborted) stderr.write('blankcheck: interrupted\n');
  const exitCode = exitCodeOf({
    results: [],
    failOn: 'error',
    usageErrors: walked.usageErrors.length,
    faults: walked.faults,
    interruptedBy: interruptionOf(signal),
  });
  if (exitCode !== 2)
    stdout.write(
      options.json
        ? toSuitsJson(results)
        : results.map((suited) => renderSuits(suited, describeTerminal(stdout, env, options))).join('\n'),
    );
  return exitCode === 0 && results.some(({ error }) => error !== null) ? 1 : exitCode;
}

function chooseBlanks({ among }: TypedOptions): ReturnType<typeof listBlanks> {
  if (among === undefined) return listBlanks();
  const blanks = searchBlanks(among.split(/\s+/));
  if (blanks.length > 0) return blanks;
  throw new BlankcheckError(
    'unknown-blank',
    `No blank fits "${among}" after --among.\nSee blankcheck blanks for all of them.`,
  );
}

function isWanted(
  { verdict, fullBleed }: { readonly verdict: string; readonly fullBleed: boolean },
  options: TypedOptions,
): boolean {
  if (options.fullBleed && !fullBleed) return false;
  if (options.atLeast === 'good') return verdict === 'good';
  return options.atLeast === undefined || verdict !== 'below';
}
