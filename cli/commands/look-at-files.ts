import { BlankcheckError, type Limits, readPrintRecord } from '../../src/index.ts';
import type { TypedOptions } from '../arguments.ts';
import { printError, printFault } from '../errors.ts';
import { exitCodeOf } from '../exit-code.ts';
import { readBestFormat } from '../inputs/choose-format.ts';
import { planInputs } from '../inputs/plan-inputs.ts';
import { createArtworkReader } from '../inputs/read-artworks.ts';
import { interruptionOf } from '../interrupt.ts';
import type { Io } from '../io.ts';
import { parseLimits } from '../limits.ts';
import { describeTerminal, type Terminal } from '../terminal.ts';
import { walkArtworks } from './walk-artworks.ts';

/** A command that looks at files and writes none; what it says of them is data, so it goes to standard output. */
export interface Look<Result> {
  /** What is missing where no word was given. */
  readonly expects: string;
  /** Of files that nobody named one by one, those with a record of ours are looked at, or those without. */
  readonly among: 'print-ready' | 'artworks';
  look(
    path: string,
    bytes: Uint8Array,
    options: { readonly limits: Partial<Limits>; readonly signal: AbortSignal },
  ): Promise<Result>;
  /** The result for a file that cannot be read. */
  unreadable(path: string, error: BlankcheckError): Result;
  /** Whether a result makes exit code 1. */
  isWrong(result: Result): boolean;
  toJson(results: readonly Result[]): string;
  render(result: Result, terminal: Terminal): string;
}

/** Looks at the files that the words stand for. Returns the exit code. @throws BlankcheckError of kind `usage`, before anything was read. */
export async function lookAtFiles<Result>(
  words: readonly string[],
  options: TypedOptions,
  io: Io,
  command: Look<Result>,
): Promise<number> {
  const { cwd, interrupt: signal, stdout, stderr, env } = io;
  if (words.length === 0)
    throw new BlankcheckError(
      'missing-artwork',
      `No ${command.expects} was given.\nName files, folders or ZIP archives, or - for standard input.`,
    );
  const limits = parseLimits(options.limit ?? []);
  const plan = await planInputs(words, { cwd, recursive: options.recursive === true, signal });
  const reader = createArtworkReader(io.stdin, signal, limits.maxBytes);
  const results: Result[] = [];
  const walked = await walkArtworks(plan, signal, {
    fault: (path, error) => printFault(stderr, error, path),
    visit: async (planned, named) => {
      signal.throwIfAborted();
      try {
        const { artwork, bytes } = await readBestFormat(planned, reader, { limits, signal });
        const isOurs = !named && bytes.look(readPrintRecord) !== null;
        if (!named && isOurs !== (command.among === 'print-ready')) return false;
        results.push(await command.look(artwork.path, bytes.take(), { limits, signal }));
      } catch (error) {
        if (!(error instanceof BlankcheckError) || error.kind !== 'artwork') throw error;
        results.push(command.unreadable(planned.path, error));
      }
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
  if (exitCode === 2) return exitCode;
  const terminal = describeTerminal(stdout, env, options);
  const text = () => results.map((result) => command.render(result, terminal)).join('\n');
  stdout.write(options.json ? command.toJson(results) : text());
  return exitCode === 0 && results.some((result) => command.isWrong(result)) ? 1 : exitCode;
}
