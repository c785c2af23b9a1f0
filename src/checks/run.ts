import type { CheckDefinition, Subject } from './define-check.ts';
import type { Outcome } from './finding.ts';

/** One outcome per check, in the order of the list. A check that throws is broken: our fault, not the artwork's. */
export function runChecks(subject: Subject, checks: readonly CheckDefinition[]): Outcome[] {
  return checks.map((check) => runCheck(subject, check));
}

function runCheck(subject: Subject, check: CheckDefinition): Outcome {
  try {
    const needs = check.needs(subject);
    if ('skip' in needs) return { check: check.id, status: 'skipped', reason: needs.skip };
    const { findings, facts, skip } = check.run(needs.inputs);
    if (findings.length > 0) return { check: check.id, status: 'found', findings };
    if (skip !== undefined) return { check: check.id, status: 'skipped', reason: skip };
    return facts ? { check: check.id, status: 'passed', facts } : { check: check.id, status: 'passed' };
  } catch (error) {
    return {
      check: check.id,
      status: 'broken',
      error: error instanceof Error ? error.message : String(error),
    };
  }
}
