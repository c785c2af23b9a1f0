import type { CheckDefinition } from '../checks/define-check.ts';
import type { Finding, Outcome } from '../checks/finding.ts';
import { CHECKS } from '../checks/index.ts';
import { phraseFinding } from './phrase.ts';
import { roundBeside, roundNumbers, roundRect } from './round-numbers.ts';

/** What one check said, as it stands in a report's document: each finding with its sentence, and the page that explains it. */
export function outcomeJsonOf(outcome: Outcome, checks: readonly CheckDefinition[]): object {
  const { check, status } = outcome;
  switch (status) {
    case 'passed':
      return { check, status, ...(outcome.facts && { facts: roundNumbers(outcome.facts) }) };
    case 'found':
      return {
        check,
        status,
        findings: outcome.findings.map((finding) => findingOf(check, finding, checks)),
      };
    case 'skipped':
      return { check, status, reason: outcome.reason };
    case 'broken':
      return { check, status, error: outcome.error };
  }
}

function findingOf(check: string, finding: Finding, checks: readonly CheckDefinition[]): object {
  const { code, severity, actual, expected, place, facts } = finding;
  return {
    code,
    severity,
    message: phraseFinding(check, finding, checks),
    ...(actual && expected
      ? roundBeside(actual, expected)
      : roundNumbers({ ...(actual && { actual }), ...(expected && { expected }) })),
    ...(place && { place: { px: roundRect(place.px), mm: roundRect(place.mm) } }),
    facts: roundNumbers(facts),
    ...pageOf(check, code),
  };
}

/** Where the package explains it; a check of somebody else's has no page here. */
function pageOf(check: string, code: string): object {
  const explained = CHECKS.some(({ id, codes }) => id === check && Object.hasOwn(codes, code));
  return explained ? { page: `docs/findings/${check}.md#${code}` } : {};
}
