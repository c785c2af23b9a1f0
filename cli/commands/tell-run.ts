import {
  type ArtworkReport,
  renderNotChecked,
  renderPrintingAdvice,
  renderRunTable,
  renderTextReport,
  renderTextSummary,
  showHidden,
  summarise,
  toRunReportJson,
  toSummaryJsonLine,
  VERSION,
} from '../../src/index.ts';
import type { TypedOptions } from '../arguments.ts';
import { printError, printFault } from '../errors.ts';
import { exitCodeOf } from '../exit-code.ts';
import type { Io } from '../io.ts';
import { describeTerminal } from '../terminal.ts';
import type { JudgedRun, RunListener } from './judge-all.ts';
import { areMany, needsALook, tellBrevity } from './many-artworks.ts';

/** Each report as it comes, a blank line between two; with --quiet only what went wrong. */
export function tellPeople(options: TypedOptions, { stderr, env }: Io, artworks: number): RunListener {
  const terminal = describeTerminal(stderr, env, options);
  const isMany = areMany(artworks);
  let told = 0;
  return {
    report(report) {
      if (options.quiet && !isWrong(report, options)) return;
      if (isMany && !needsALook(report)) return;
      const text = renderTextReport(report, {
        ...terminal,
        brief: isMany,
        // With --quiet there is no end that tells it.
        notCheckedApart: options.quiet !== true,
        showPlan: options.dryRun === true,
        proofAsked: options.proof !== undefined,
      });
      stderr.write(told === 0 ? text : `\n${text}`);
      told += 1;
    },
    fault: (path, error) => printFault(stderr, error, path),
  };
}

/** Is it why nothing was written, or why the exit code is not 0? */
function isWrong(report: ArtworkReport, { failOn = 'error' }: TypedOptions): boolean {
  const alone = { results: [report], failOn, usageErrors: 0, faults: 0, interruptedBy: null };
  return report.status === 'stop' || exitCodeOf(alone) !== 0;
}

/** How many were not done again. */
export function tellUnchanged(artworks: number, { quiet }: TypedOptions, { stderr }: Io): void {
  if (quiet || artworks === 0) return;
  const what = artworks === 1 ? '1 artwork is' : `${artworks} artworks are`;
  stderr.write(`\nblankcheck: ${what} unchanged since the last run; --fresh judges all anew\n`);
}

/** How many there were, what named nothing, and how far an interrupted run came. */
export function tellEnd(
  run: JudgedRun,
  planned: number,
  options: TypedOptions,
  { stderr, env, interrupt }: Io,
): void {
  const { results, passedOver, usageErrors } = run;
  if (!options.quiet && (results.length > 1 || passedOver > 0)) {
    const terminal = describeTerminal(stderr, env, options);
    const notWritten = results.filter(({ status, error }) => status === 'ready' && error !== null).length;
    const text = renderTextSummary(summarise(results, passedOver), terminal, notWritten);
    const table = results.length > 1 ? `${renderRunTable(results, terminal)}\n` : '';
    stderr.write(results.length > 0 ? `\n${table}${text}` : text);
    if (areMany(planned)) {
      const shared = [renderNotChecked(results, terminal), renderPrintingAdvice(results, terminal)];
      stderr.write(`${shared.map((told) => told && `\n${told}`).join('')}${tellBrevity(true)}`);
    }
  }
  for (const error of usageErrors) printError(stderr, error);
  if (interrupt.aborted) {
    const files = results.flatMap(listWritten).length;
    stderr.write(
      `blankcheck: interrupted; artworks judged: ${results.length} of ${planned}, files written: ${files}\n`,
    );
  }
}

/** The report as JSON, which has names as they are; or the paths of the files written, one a line and visible. */
export function tellPrograms(
  { results, passedOver }: JudgedRun,
  options: TypedOptions,
  { stdout }: Io,
): void {
  if (options.jsonLines) {
    stdout.write(toSummaryJsonLine(summarise(results, passedOver)));
    return;
  }
  if (options.json) {
    const program = { name: 'blankcheck', version: VERSION } as const;
    stdout.write(
      toRunReportJson({ schemaVersion: 1, program, summary: summarise(results, passedOver), results }),
    );
    return;
  }
  for (const path of results.flatMap(listWritten)) stdout.write(`${showHidden(path)}\n`);
}

function listWritten({ output, proof, picture }: ArtworkReport): readonly string[] {
  const files = [output, proof, ...(picture && 'path' in picture ? [picture] : [])];
  return files.flatMap((file) => (file ? [file.path] : []));
}
