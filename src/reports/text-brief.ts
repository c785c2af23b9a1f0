import type { CheckDefinition } from '../checks/define-check.ts';
import type { Outcome } from '../checks/finding.ts';
import { listNotChecked } from './not-checked.ts';
import { hang, type Page } from './page.ts';
import type { ArtworkReport } from './report.ts';
import { tellFile } from './text-file.ts';
import { tellFindings } from './text-findings.ts';
import { showHidden } from './visible-text.ts';

interface BriefPage extends Page {
  /** The checks without a result are told apart from it, once for all artworks of the run. */
  readonly notCheckedApart?: boolean;
}

/**
 * Of one artwork among very many: errors and warnings, how many notes there are, which checks have no result, and a file
 * that could not be written. Blocks of lines, some of them empty.
 */
export function tellInBrief(
  report: ArtworkReport,
  checks: readonly CheckDefinition[],
  page: BriefPage,
): readonly (readonly string[])[] {
  const { outcomes, error, status } = report;
  return [
    ...tellFindings(outcomes.map(withoutAdvice), checks, page),
    tellRest(outcomes, page),
    error && status !== 'unreadable' ? tellFile(report, page) : [],
  ];
}

function withoutAdvice(outcome: Outcome): Outcome {
  if (outcome.status !== 'found') return outcome;
  return { ...outcome, findings: outcome.findings.filter(({ severity }) => severity !== 'advice') };
}

/** What was not checked never looks like passed: its names stay, or how many they are where they are told apart. */
function tellRest(outcomes: readonly Outcome[], { notCheckedApart, ...page }: BriefPage): readonly string[] {
  const notes = outcomes
    .flatMap((outcome) => (outcome.status === 'found' ? outcome.findings : []))
    .filter(({ severity }) => severity === 'advice').length;
  const skipped = outcomes.filter(({ status }) => status === 'skipped').map(({ check }) => check);
  const gaps = notCheckedApart ? `${skipped.length} of ${outcomes.length} checks` : skipped.join(', ');
  const broken = listNotChecked(outcomes.filter(({ status }) => status === 'broken'));
  return [
    ...(notes > 0 ? hang('  [i] ', notes === 1 ? '1 note' : `${notes} notes`, page) : []),
    ...(skipped.length > 0 ? hang('  [?] ', showHidden(`Not checked: ${gaps}`), page) : []),
    ...broken.flatMap(({ text }) => hang('  [?] ', showHidden(text), page, 'look')),
  ];
}
