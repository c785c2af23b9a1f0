import { MM_PER_INCH } from '../geometry/length.ts';
import type { BlankInHand } from '../job/job.ts';

/** Doubles lose at most this share on the way from pixels and mm to ppi; it must not decide a verdict. */
const ROUNDING = 1e-9;

type Limits = BlankInHand['resolution'];

/** The gravest limit that a resolution lies below, and the one worth aiming at. */
export interface MissedLimit {
  readonly code: 'below-stop' | 'below-acceptable' | 'below-good';
  readonly severity: 'error' | 'warning' | 'advice';
  readonly limit: Limits['good'];
  readonly aim: Limits['good'];
}

/** What `ppi` at the print size misses of the limits of the family; null where it is good. At a limit it passes. */
export function findMissedLimit(ppi: number, limits: Limits): MissedLimit | null {
  const below = (limit: number) => ppi < limit * (1 - ROUNDING);
  const { stopBelow, acceptable, good } = limits;
  if (below(stopBelow.value))
    return { code: 'below-stop', severity: 'error', limit: stopBelow, aim: acceptable };
  if (below(acceptable.value))
    return { code: 'below-acceptable', severity: 'warning', limit: acceptable, aim: acceptable };
  return below(good.value) ? { code: 'below-good', severity: 'advice', limit: good, aim: good } : null;
}

/** To a hundredth of an inch, downwards, so that the advice to print no larger keeps its promise. */
export function roundDownForAdvice(mm: number): number {
  const step = MM_PER_INCH / 100;
  return Math.floor(mm / step) * step;
}
