import type { RectMm, RectPx } from '../geometry/rectangle.ts';

export type Severity = 'error' | 'warning' | 'advice';

export type Unit = 'mm' | 'ppi' | 'px' | 'percent' | 'dE00' | 'mm2' | 'cm2' | 'L*';

export interface Quantity {
  readonly value: number;
  readonly unit: Unit;
}

/**
 * A limit and the record that set it (`blank:tile-ceramic-8in`, `family:stone-slate`, `option:--bleed`); `derived:` and
 * `geometry:` where it is no choice of anybody's but follows from the job.
 */
export interface Range {
  readonly min?: number;
  readonly max?: number;
  readonly unit: Unit;
  readonly from: string;
}

/** A value, or a flat list of records of values. */
export type Fact = number | string | boolean | readonly Readonly<Record<string, number | string>>[];

/** What is wrong with an artwork on a blank, as data; the sentence is made from it by the check's phrase. */
export interface Finding {
  /** Unique within its check, e.g. `below-stop`. */
  readonly code: string;
  readonly severity: Severity;
  readonly actual?: Quantity;
  readonly expected?: Range;
  /** px of the artwork as displayed; mm on the blank, origin top left of its outline box, seen from the front. */
  readonly place?: { readonly px: RectPx; readonly mm: RectMm };
  readonly facts: Readonly<Record<string, Fact>>;
}

/** What one check said about one job: exactly one per check, in the order of the list. */
export type Outcome =
  | { readonly check: string; readonly status: 'passed'; readonly facts?: Readonly<Record<string, Fact>> }
  | { readonly check: string; readonly status: 'found'; readonly findings: readonly Finding[] }
  | { readonly check: string; readonly status: 'skipped'; readonly reason: string }
  | { readonly check: string; readonly status: 'broken'; readonly error: string };
