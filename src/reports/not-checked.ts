import type { Outcome } from '../checks/finding.ts';

/** A check without a result, or several without one for the same reason. */
export interface NotChecked {
  readonly text: string;
  /** It broke: nothing is wrong with the artwork. */
  readonly isOurFault: boolean;
}

/** What was not checked and why, in the order of the checks; those skipped for the same reason together with the first. */
export function listNotChecked(outcomes: readonly Outcome[]): readonly NotChecked[] {
  const skipped = new Map<string, string[]>();
  for (const outcome of outcomes)
    if (outcome.status === 'skipped')
      skipped.set(outcome.reason, [...(skipped.get(outcome.reason) ?? []), outcome.check]);
  return outcomes.flatMap((outcome): readonly NotChecked[] => {
    if (outcome.status === 'skipped') {
      const checks = skipped.get(outcome.reason) ?? [];
      if (checks[0] !== outcome.check) return [];
      return [{ text: `${checks.join(', ')}: ${outcome.reason}`, isOurFault: false }];
    }
    if (outcome.status !== 'broken') return [];
    const text = `${outcome.check}: this check failed by our fault, not by your art's. Please report it: ${outcome.error}`;
    return [{ text, isOurFault: true }];
  });
}
