import type { Outcome } from '../checks/finding.ts';
import type { Status } from './report.ts';

/**
 * The verdict on an artwork that could be read: an error stops, a warning or a check of ours that broke asks for a
 * look, advice alone leaves it ready. Where no check came to a result (none ran, all were skipped) it is `look`:
 * what was not checked must never read as passed.
 */
export function statusOf(outcomes: readonly Outcome[]): Exclude<Status, 'unreadable'> {
  const severities = new Set(
    outcomes
      .flatMap((outcome) => (outcome.status === 'found' ? outcome.findings : []))
      .map((finding) => finding.severity),
  );
  if (severities.has('error')) return 'stop';
  const broken = outcomes.some((outcome) => outcome.status === 'broken');
  const judged = outcomes.some((outcome) => outcome.status === 'passed' || outcome.status === 'found');
  return severities.has('warning') || broken || !judged ? 'look' : 'ready';
}
