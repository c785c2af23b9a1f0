import type { CheckDefinition } from '../checks/define-check.ts';
import type { Outcome, Severity } from '../checks/finding.ts';
import { type Found, listFound, nameOf } from './list-found.ts';
import { hang, type Page, paint, type Style } from './page.ts';
import { phraseFinding } from './phrase.ts';
import { showHidden } from './visible-text.ts';

/** Of one code of one check only so many are told: two hundred like sentences hide the one that differs. */
const TOLD_PER_CODE = 5;

const MARKS = {
  error: ['  [x] STOP  ', 'stop'],
  warning: ['  [!] LOOK  ', 'look'],
  advice: ['  [i] NOTE  ', 'note'],
} as const satisfies Record<Severity, readonly [label: string, style: Style]>;

/** One block of lines for each finding: the worst first, within a severity in the order of the checks. */
export function tellFindings(
  outcomes: readonly Outcome[],
  checks: readonly CheckDefinition[],
  page: Page,
): readonly (readonly string[])[] {
  const found = listFound(outcomes);
  const names = [...new Set(found.map((entry) => `${entry.finding.severity} ${nameOf(entry)}`))];
  return names.flatMap((name) => {
    const alike = found.filter((entry) => `${entry.finding.severity} ${nameOf(entry)}` === name);
    const told = alike.slice(0, TOLD_PER_CODE).map((entry) => tellFinding(entry, checks, page));
    return alike.length > told.length
      ? [...told, tellRest(alike[0]!.finding.severity, alike.length - told.length, page)]
      : told;
  });
}

function tellRest(severity: Severity, count: number, page: Page): readonly string[] {
  const [label, style] = MARKS[severity];
  return hang(label, `And ${count} more like these; the JSON report lists them all.`, page, style);
}

function tellFinding(
  { check, finding }: Found,
  checks: readonly CheckDefinition[],
  page: Page,
): readonly string[] {
  const [label, style] = MARKS[finding.severity];
  const limit = finding.expected ? `, limit set by ${finding.expected.from}` : '';
  const origin = showHidden(`(${nameOf({ check, finding })}${limit})`);
  return [
    ...hang(label, showHidden(phraseFinding(check, finding, checks)), page, style),
    ...hang(' '.repeat(label.length), paint(origin, 'quiet', page), page),
  ];
}
