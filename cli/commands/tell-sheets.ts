import {
  type ArtworkReport,
  type BlankcheckError,
  renderNotChecked,
  renderTextReport,
  renderTextSheets,
  renderTextSummary,
  type SheetsReport,
  showHidden,
  summarise,
  toRunReportJson,
  VERSION,
} from '../../src/index.ts';
import type { TypedOptions } from '../arguments.ts';
import { printError, printFault } from '../errors.ts';
import { exitCodeOf } from '../exit-code.ts';
import type { Io } from '../io.ts';
import { describeTerminal } from '../terminal.ts';
import type { RunListener } from './judge-all.ts';
import { areMany, needsALook, tellBrevity } from './many-artworks.ts';

/** What a run of `sheet` came to. */
export interface SheetsRun extends SheetsReport {
  readonly results: readonly ArtworkReport[];
  readonly passedOver: number;
  readonly driverMirrors: boolean;
  readonly usageErrors: readonly BlankcheckError[];
}

export interface SheetsListener extends RunListener {
  /** The sheets, what is on none, and what named nothing. */
  end(run: SheetsRun): void;
}

/**
 * Each report as it comes, of many artworks only those of what needs a look, then their count and the sheets; with --quiet
 * only what went wrong.
 */
export function tellPeopleOfSheets(
  options: TypedOptions,
  { stderr, env, interrupt }: Io,
  artworks: number,
): SheetsListener {
  const page = describeTerminal(stderr, env, options);
  const brief = areMany(artworks);
  let told = 0;
  const tell = (text: string) => {
    stderr.write(told === 0 ? text : `\n${text}`);
    told += 1;
  };
  return {
    report(report) {
      if (options.quiet && !isWrong(report, options)) return;
      if (brief && !needsALook(report)) return;
      const showPlan = options.dryRun === true;
      tell(
        renderTextReport(report, {
          ...page,
          brief,
          notCheckedApart: !options.quiet,
          showPlan,
          onSheets: true,
        }),
      );
    },
    fault: (path, error) => printFault(stderr, error, path),
    end(run) {
      const { results, passedOver } = run;
      if (!options.quiet && (results.length > 1 || passedOver > 0))
        tell(renderTextSummary(summarise(results, passedOver), page));
      const notChecked = brief && !options.quiet ? renderNotChecked(results, page) : '';
      if (notChecked) tell(notChecked);
      const wrong = run.leftOut.length > 0 || run.sheets.some(({ error }) => error);
      if (!interrupt.aborted && (!options.quiet || wrong))
        tell(renderTextSheets(run, { ...page, driverMirrors: run.driverMirrors }));
      if (brief && !options.quiet) stderr.write(tellBrevity(false));
      for (const error of run.usageErrors) printError(stderr, error);
      if (interrupt.aborted) stderr.write('blankcheck: interrupted\n');
    },
  };
}

function isWrong(report: ArtworkReport, { failOn = 'error' }: TypedOptions): boolean {
  const alone = { results: [report], failOn, usageErrors: 0, faults: 0, interruptedBy: null };
  return report.status === 'stop' || exitCodeOf(alone) !== 0;
}

/** The report as JSON, which has names as they are; or the paths of the sheets written, one a line and visible. */
export function tellProgramsOfSheets(run: SheetsRun, options: TypedOptions, { stdout }: Io): void {
  if (options.json) {
    const { results, passedOver } = run;
    const program = { name: 'blankcheck', version: VERSION } as const;
    stdout.write(
      toRunReportJson({ schemaVersion: 1, program, summary: summarise(results, passedOver), ...run }),
    );
    return;
  }
  // A PDF holds several sheets.
  const paths = new Set(run.sheets.flatMap(({ output }) => (output ? [output.path] : [])));
  for (const path of paths) stdout.write(`${showHidden(path)}\n`);
}
