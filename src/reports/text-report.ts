import type { CheckDefinition } from '../checks/define-check.ts';
import type { Outcome } from '../checks/finding.ts';
import { CHECKS } from '../checks/index.ts';
import { listNotChecked } from './not-checked.ts';
import { hang, type Page, paint } from './page.ts';
import type { ArtworkReport } from './report.ts';
import { tellPlan, tellStep } from './step-words.ts';
import { subjectRows, tellOthers } from './subject-rows.ts';
import { tellInBrief } from './text-brief.ts';
import { tellCost } from './text-cost.ts';
import { tellFile } from './text-file.ts';
import { tellFindings } from './text-findings.ts';
import { tellMends } from './text-mends.ts';
import { tellPicture } from './text-picture.ts';
import { tellProof } from './text-proof.ts';
import { tellSheet } from './text-sheet.ts';
import { tellWork, VERDICT_STYLES, VERDICT_WORDS } from './verdict-words.ts';
import { showHidden } from './visible-text.ts';
import { findWorst } from './worst-finding.ts';

export interface TextReportOptions extends Page {
  /** Tell the plan step by step, as a dry run does; in one line otherwise. */
  readonly showPlan?: boolean;
  /** Say where there is no proof too, and why. */
  readonly proofAsked?: boolean;
  /** Its pictures go on sheets, which are told apart from it: nothing of a file of its own. */
  readonly onSheets?: boolean;
  /** Of one among very many: the verdict and what led to it; of all else how much there is. */
  readonly brief?: boolean;
  /** In brief: which checks have no result is told apart, once for all artworks of the run. */
  readonly notCheckedApart?: boolean;
  /** Whose phrases tell the findings; the program's own by default. */
  readonly checks?: readonly CheckDefinition[];
}

/**
 * The report of one artwork for a person at a terminal, with a newline at its end: the verdict, what was judged, the
 * findings with what to do, what was not checked and why, the plan, and the file with how to print it. Lines keep to
 * the width of the page, save a path to copy. Nothing that came from a file can steer the terminal.
 */
export function renderTextReport(report: ArtworkReport, options: TextReportOptions): string {
  const head = [
    tellVerdict(report, options),
    report.status === 'unreadable' ? tellReason(report, options) : tellSubject(report, options),
  ];
  const rest = options.brief
    ? tellInBrief(report, options.checks ?? CHECKS, options)
    : tellAll(report, options);
  return [...head, ...rest]
    .filter((lines) => lines.length > 0)
    .map((lines) => `${lines.join('\n')}\n`)
    .join('\n');
}

type Sections = readonly (readonly string[])[];

function tellAll(report: ArtworkReport, options: TextReportOptions): Sections {
  const { outcomes } = report;
  return [
    tellSheet(report, options),
    tellMends(report, options),
    ...tellFindings(outcomes, options.checks ?? CHECKS, options),
    tellMore(outcomes, options),
    tellNotChecked(outcomes, options),
    [...tellPassed(outcomes, options), ...(options.showPlan ? [] : tellPlanInALine(report, options))],
    options.showPlan ? tellSteps(report, options) : [],
    options.onSheets ? [] : tellFile(report, options),
    tellProof(report, options),
    tellPicture(report, options),
    tellCost(report, options),
  ];
}

function tellVerdict(report: ArtworkReport, page: Page): readonly string[] {
  const work = tellWork(report);
  const name = showHidden(report.artwork.path);
  const told = work ? `${name} (${work})` : name;
  // Under READY TO PRINT, a file of an older run that was left where it is would be taken for this one.
  if (report.error && report.status === 'ready') return hang('NOT WRITTEN: ', told, page, 'stop');
  return hang(`${VERDICT_WORDS[report.status]}: `, told, page, VERDICT_STYLES[report.status]);
}

/** Where the worst finding is explained; the others by the names beside them. */
function tellMore(outcomes: readonly Outcome[], page: Page): readonly string[] {
  const worst = findWorst({ error: null, outcomes });
  return worst ? hang('  ', paint(`What it means: blankcheck explain ${worst}`, 'quiet', page), page) : [];
}

function tellReason({ status, error, artwork }: ArtworkReport, page: Page): readonly string[] {
  if (!error) return [];
  const others = status === 'unreadable' && artwork.insteadOf ? tellOthers(artwork) : undefined;
  return [
    ...hang('  ', showHidden(error.message), page),
    ...hang('  ', paint(showHidden(`(${error.code})`), 'quiet', page), page),
    ...(others ? hang('  ', `Instead of  ${showHidden(others)}`, page) : []),
  ];
}

function tellSubject(report: ArtworkReport, { brief, ...page }: TextReportOptions): readonly string[] {
  // The blank is the same for all of them.
  const rows = subjectRows(report).filter(([label]) => !brief || label !== 'Blank');
  return rows.flatMap(([label, text]) => hang(`  ${label.padEnd(12)}`, showHidden(text), page));
}

function tellNotChecked(outcomes: readonly Outcome[], page: Page): readonly string[] {
  const lines = listNotChecked(outcomes).flatMap(({ text, isOurFault }) =>
    hang('  [?] ', showHidden(text), page, isOurFault ? 'look' : undefined),
  );
  return lines.length > 0 ? [paint('Not checked', 'strong', page), ...lines] : [];
}

function tellPassed(outcomes: readonly Outcome[], page: Page): readonly string[] {
  const passed = outcomes.filter((outcome) => outcome.status === 'passed').map((outcome) => outcome.check);
  if (passed.length === 0) return [];
  const count = passed.length === 1 ? '1 check' : `${passed.length} checks`;
  return hang('Passed: ', showHidden(`${count} (${passed.join(', ')})`), page);
}

function tellPlanInALine({ plan }: ArtworkReport, page: Page): readonly string[] {
  return plan.length > 0 ? hang('Plan:   ', tellPlan(plan), page) : [];
}

function tellSteps({ plan }: ArtworkReport, page: Page): readonly string[] {
  if (plan.length === 0) return [];
  const steps = plan.flatMap((step, index) =>
    hang(`${String(index + 1).padStart(3)}. `, showHidden(tellStep(step)), page),
  );
  return [paint('Plan', 'strong', page), ...steps];
}
