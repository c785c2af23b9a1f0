import { formatLength, MM_PER_INCH } from '../geometry/length.ts';
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

/** What the limit that is missed stands for, and the one that the advice aims at: two numbers of ppi in one sentence. */
export const LIMIT_WORDS: Readonly<Record<string, { readonly least: string; readonly aim: string }>> = {
  'below-stop': { least: 'to be printed at all', aim: 'from which it looks acceptable' },
  'below-acceptable': { least: 'to look acceptable', aim: 'from which it does' },
  'below-good': { least: 'to look good', aim: 'from which it does' },
};

/** Nobody lays a ruler on less, and art as thin as that is told of by its longer side. */
const LEAST_TOLD_MM = 1;

/** `at most 40.6 mm (1.6 in) wide`, rounded down; by its height where it is next to no width, empty where it is neither. */
export function phraseLargestSize(widthMm: number, heightMm: number): string {
  const [width, height] = [roundDownForAdvice(widthMm), roundDownForAdvice(heightMm)];
  if (width >= LEAST_TOLD_MM) return `at most ${formatLength(width)} wide`;
  return height >= LEAST_TOLD_MM ? `at most ${formatLength(height)} high` : '';
}

/** To a hundredth of an inch, downwards, so that the advice to print no larger keeps its promise. */
function roundDownForAdvice(mm: number): number {
  const step = MM_PER_INCH / 100;
  return Math.floor(mm / step) * step;
}
