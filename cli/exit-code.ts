import type { RunReport } from '../src/index.ts';

export type FailOn = 'error' | 'warning' | 'advice' | 'never';

/** What a run came to, as far as its exit code asks. */
export interface RunEnd {
  readonly results: RunReport['results'];
  readonly failOn: FailOn;
  /** Something named on the command line that does not exist or holds no artwork. */
  readonly usageErrors: number;
  /** Artworks that a fault of the program left without a result. */
  readonly faults: number;
  readonly interruptedBy: NodeJS.Signals | null;
  /** Pieces that are on no sheet, and sheets that were not written; none when left out. */
  readonly unmade?: number;
}

const SEVERITIES = ['advice', 'warning', 'error'] as const;
/** 128 and the number of the signal, as shells have it (POSIX.1-2017, 2.8.2). */
const SIGNAL_CODES: Partial<Record<NodeJS.Signals, number>> = { SIGHUP: 129, SIGINT: 130, SIGTERM: 143 };

/**
 * 0 clean, 1 findings at or above the limit, unreadable or unwritten, 2 usage, 3 a fault of the program, 130
 * interrupted. Of several interruption first, then faults, usage and findings. A check that broke is a fault.
 */
export function exitCodeOf({
  results,
  failOn,
  usageErrors,
  faults,
  interruptedBy,
  unmade = 0,
}: RunEnd): number {
  if (interruptedBy) return SIGNAL_CODES[interruptedBy] ?? 130;
  const outcomes = results.flatMap((result) => result.outcomes);
  if (faults > 0 || outcomes.some(({ status }) => status === 'broken')) return 3;
  if (usageErrors > 0) return 2;
  if (
    unmade > 0 ||
    results.some(
      ({ status, error, proofError, picture }) =>
        status === 'unreadable' ||
        error !== null ||
        proofError !== null ||
        (picture !== undefined && 'error' in picture),
    )
  )
    return 1;
  const failing = failOn === 'never' ? [] : SEVERITIES.slice(SEVERITIES.indexOf(failOn));
  const findings = outcomes.flatMap((outcome) => (outcome.status === 'found' ? outcome.findings : []));
  return findings.some(({ severity }) => failing.includes(severity)) ? 1 : 0;
}
