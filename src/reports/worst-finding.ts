import type { Finding } from '../checks/finding.ts';
import type { ArtworkReport, Status } from './report.ts';

const SEVERITIES: readonly Finding['severity'][] = ['error', 'warning', 'advice'];
const URGENCY: readonly Status[] = ['unreadable', 'stop', 'look', 'ready'];

/** What an artwork is held up by: its error, or the first of its gravest findings as `<check>/<code>`; null where there is nothing. */
export function findWorst({ error, outcomes }: Pick<ArtworkReport, 'error' | 'outcomes'>): string | null {
  if (error) return error.code;
  const found = outcomes.flatMap((outcome) =>
    outcome.status === 'found'
      ? outcome.findings.map((finding) => ({ check: outcome.check, ...finding }))
      : [],
  );
  const rank = ({ severity }: Finding) => SEVERITIES.indexOf(severity);
  const [worst] = [...found].sort((a, b) => rank(a) - rank(b));
  return worst ? `${worst.check}/${worst.code}` : null;
}

/** What needs attention first: unreadable, to be mended, to be looked at, not written, ready; else in the order given. */
export function sortByAttention<Report extends Pick<ArtworkReport, 'status' | 'error'>>(
  reports: readonly Report[],
): readonly Report[] {
  const rank = ({ status, error }: Report) => URGENCY.indexOf(status) - (error ? 0.5 : 0);
  return [...reports].sort((a, b) => rank(a) - rank(b));
}
