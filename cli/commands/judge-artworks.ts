import { BlankcheckError, choosePrintReadyFormat } from '../../src/index.ts';
import type { TypedOptions } from '../arguments.ts';
import { exitCodeOf } from '../exit-code.ts';
import { planInputs } from '../inputs/plan-inputs.ts';
import { createArtworkReader } from '../inputs/read-artworks.ts';
import { interruptionOf } from '../interrupt.ts';
import type { Io } from '../io.ts';
import { parseLimits } from '../limits.ts';
import { createInputGuard } from '../output/input-guard.ts';
import type { TempFiles } from '../output/temp-files.ts';
import { judgeAll } from './judge-all.ts';
import { readRequest } from './read-request.ts';
import { tellEnd, tellPeople, tellPrograms } from './tell-run.ts';

/**
 * `prepare` and `check`: judges the artworks that the words stand for, tells people on standard error and programs on
 * standard output. Returns the exit code. @throws BlankcheckError of kind `usage`, before anything was read.
 */
export async function judgeArtworks(
  command: 'prepare' | 'check',
  words: readonly string[],
  options: TypedOptions,
  io: Io,
  temps: TempFiles,
): Promise<number> {
  refuseLoneMark(options);
  const { cwd, interrupt: signal } = io;
  const request = await readRequest(options, cwd, signal);
  const limits = parseLimits(options.limit ?? []);
  if (words.length === 0) {
    throw new BlankcheckError(
      'missing-artwork',
      'No artwork was given.\nName files, folders or ZIP archives, or - for standard input.',
    );
  }
  const plan = await planInputs(words, { cwd, recursive: options.recursive === true, signal });
  const origins = plan.planned.flatMap(({ artworks }) => artworks.map(({ origin }) => origin));
  const judging = {
    request,
    format: choosePrintReadyFormat(request.conversion, {
      format: options.format,
      background: request.background,
      sheet: request.sheet,
    }),
    writes: command === 'prepare' && options.dryRun !== true,
    proof:
      options.dryRun === true || options.proof === undefined ? null : { mark: options.proofMark === true },
    anyway: options.anyway === true,
    force: options.force === true,
    cwd,
    signal,
    limits,
    reader: createArtworkReader(io.stdin, signal, limits.maxBytes),
    guard: createInputGuard(origins),
    temps,
  } as const;
  const run = await judgeAll(
    plan,
    { out: options.out, proof: options.proof },
    judging,
    tellPeople(options, io),
  );
  tellEnd(run, origins.length, options, io);
  const exitCode = exitCodeOf({
    results: run.results,
    failOn: options.failOn ?? 'error',
    usageErrors: run.usageErrors.length,
    faults: run.faults,
    interruptedBy: interruptionOf(signal),
  });
  if (exitCode !== 2) tellPrograms(run, options, io);
  return exitCode;
}

function refuseLoneMark({ proof, proofMark }: TypedOptions): void {
  if (proofMark === true && proof === undefined)
    throw new BlankcheckError(
      'bad-option',
      '--proof-mark marks a proof, and none is asked for.\nSay where proofs go, such as --proof proofs --proof-mark.',
    );
}
