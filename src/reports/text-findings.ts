import type { CheckDefinition } from '../checks/define-check.ts';
import type { Finding, Outcome, Severity } from '../checks/finding.ts';
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

const SEVERITIES = Object.keys(MARKS) as readonly Severity[];

interface Found {
  readonly check: string;
  readonly finding: Finding;
}

/** One block of lines for each finding: the worst first, within a severity in the order of the checks. */
export function tellFindings(
  outcomes: readonly Outcome[],
  checks: readonly CheckDefinition[],
  page: Page,
): readonly (readonly string[])[] {
  const found = outcomes.flatMap((outcome) =>
    outcome.status === 'found' ? outcome.findings.map((finding) => ({ check: outcome.check, finding })) : [],
  );
  return SEVERITIES.flatMap((severity) => {
    const ofSeverity = found.filter(({ finding }) => finding.severity === severity);
    const names = [...new Set(ofSeverity.map(nameOf))];
    return names.flatMap((name) => {
      const alike = ofSeverity.filter((entry) => nameOf(entry) === name);
      const told = alike.slice(0, TOLD_PER_CODE).map((entry) => tellFinding(entry, checks, page));
      return alike.length > told.length
        ? [...told, tellRest(severity, alike.length - told.length, page)]
        : told;
    });
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

function nameOf({ check, finding }: Found): string {
  return `${check}/${finding.code}`;
}
