import type { Finding, Outcome, Severity } from '../checks/finding.ts';

const SEVERITIES = ['error', 'warning', 'advice'] as const satisfies readonly Severity[];

export interface Found {
  readonly check: string;
  readonly finding: Finding;
}

/** `<check>/<code>`. */
export function nameOf({ check, finding }: Found): string {
  return `${check}/${finding.code}`;
}

/** All findings: the worst first, within a severity in the order of the checks, those of one name together. */
export function listFound(outcomes: readonly Outcome[]): readonly Found[] {
  const found = outcomes.flatMap((outcome) =>
    outcome.status === 'found' ? outcome.findings.map((finding) => ({ check: outcome.check, finding })) : [],
  );
  return SEVERITIES.flatMap((severity) => {
    const ofSeverity = found.filter(({ finding }) => finding.severity === severity);
    const names = [...new Set(ofSeverity.map(nameOf))];
    return names.flatMap((name) => ofSeverity.filter((entry) => nameOf(entry) === name));
  });
}
