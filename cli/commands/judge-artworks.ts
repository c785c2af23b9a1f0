import {
  BlankcheckError,
  CHECKS,
  renderTextReport,
  renderTextSummary,
  summarise,
  toRunReportJson,
  VERSION,
} from '../../src/index.ts';
import type { TypedOptions } from '../arguments.ts';
import { printError, printFault } from '../errors.ts';
import { exitCodeOf } from '../exit-code.ts';
import { planInputs } from '../inputs/plan-inputs.ts';
import { createArtworkReader } from '../inputs/read-artworks.ts';
import { interruptionOf } from '../interrupt.ts';
import type { Io } from '../io.ts';
import { createInputGuard } from '../output/input-guard.ts';
import type { TempFiles } from '../output/temp-files.ts';
import { describeTerminal } from '../terminal.ts';
import { type JudgedRun, judgeAll, type RunListener } from './judge-all.ts';
import { readRequest } from './read-request.ts';

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
  const { cwd, interrupt: signal } = io;
  const request = await readRequest(options, cwd);
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
    format: options.format === 'tiff' ? 'tiff' : 'png',
    writes: command === 'prepare' && options.dryRun !== true,
    anyway: options.anyway === true,
    force: options.force === true,
    cwd,
    signal,
    reader: createArtworkReader(io.stdin, signal),
    guard: createInputGuard(origins),
    temps,
  } as const;
  const run = await judgeAll(plan, options.out, judging, tellPeople(options, io));
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

/** Each report as it comes, a blank line between two; with --quiet only what went wrong. */
function tellPeople(options: TypedOptions, { stderr, env }: Io): RunListener {
  const terminal = describeTerminal(stderr, env, options);
  let told = 0;
  return {
    report(report) {
      const wrong = report.status === 'stop' || report.error !== null;
      if (options.quiet && !wrong) return;
      const text = renderTextReport(report, {
        ...terminal,
        checks: CHECKS,
        showPlan: options.dryRun === true,
      });
      stderr.write(told === 0 ? text : `\n${text}`);
      told += 1;
    },
    fault: (path, error) => printFault(stderr, error, path),
  };
}

function tellEnd(
  run: JudgedRun,
  planned: number,
  options: TypedOptions,
  { stderr, env, interrupt }: Io,
): void {
  const { results, passedOver, usageErrors } = run;
  if (!options.quiet && (results.length > 1 || passedOver > 0)) {
    const text = renderTextSummary(summarise(results, passedOver), describeTerminal(stderr, env, options));
    stderr.write(results.length > 0 ? `\n${text}` : text);
  }
  for (const error of usageErrors) printError(stderr, error);
  if (interrupt.aborted) {
    const files = results.filter(({ output }) => output !== null).length;
    stderr.write(
      `blankcheck: interrupted; of ${planned} artworks ${results.length} were judged, ${files} files written\n`,
    );
  }
}

function tellPrograms({ results, passedOver }: JudgedRun, options: TypedOptions, { stdout }: Io): void {
  if (options.json) {
    const program = { name: 'blankcheck', version: VERSION } as const;
    stdout.write(
      toRunReportJson(
        { schemaVersion: 1, program, summary: summarise(results, passedOver), results },
        CHECKS,
      ),
    );
    return;
  }
  for (const { output } of results) if (output) stdout.write(`${output.path}\n`);
}
