import type { CheckDefinition } from '../checks/define-check.ts';
import type { Finding, Range } from '../checks/finding.ts';
import { CHECKS } from '../checks/index.ts';
import { roundNumber } from './round-numbers.ts';

/**
 * The sentence of a finding, from the phrase table of its check: what is wrong, where, how much, what to do.
 * Where the table has no phrase, or the phrase fails, the code and every number are told instead: a fault in our
 * words must not cost the maker the finding.
 */
export function phraseFinding(
  checkId: string,
  finding: Finding,
  checks: readonly CheckDefinition[] = CHECKS,
): string {
  const phrases = checks.find((check) => check.id === checkId)?.phrases ?? {};
  const phrase = Object.hasOwn(phrases, finding.code) ? phrases[finding.code] : undefined;
  if (phrase === undefined) return tellPlainly(checkId, finding);
  try {
    return phrase(finding);
  } catch {
    return tellPlainly(checkId, finding);
  }
}

function tellPlainly(checkId: string, { code, actual, expected, facts }: Finding): string {
  const parts = [
    ...(actual ? [`${actual.value} ${actual.unit}`] : []),
    ...(expected ? [`expected ${tellRange(expected)}`] : []),
    ...Object.entries(facts).map(
      ([name, fact]) => `${name} ${typeof fact === 'object' ? JSON.stringify(fact) : fact}`,
    ),
  ];
  return `${checkId}/${code}${parts.length > 0 ? `: ${parts.join('; ')}` : ''}`;
}

function tellRange({ min, max, unit, from }: Range): string {
  const bounds = [
    ...(min === undefined ? [] : [`at least ${roundNumber(min)}`]),
    ...(max === undefined ? [] : [`at most ${roundNumber(max)}`]),
  ];
  return `${bounds.join(' and ')} ${unit}, set by ${from}`;
}
