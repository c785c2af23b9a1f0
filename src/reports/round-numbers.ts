import type { Quantity, Range } from '../checks/finding.ts';
import type { RectMm } from '../geometry/rectangle.ts';

/**
 * A millionth of a millimetre or of a pixel per inch: far below anything that can be printed, far above the noise of
 * double arithmetic, so that 0.1 + 0.2 is written as 0.3.
 */
const DECIMALS = 6;

/** The number as a report writes it: rounded to six decimals; -0 becomes 0. */
export function roundNumber(value: number): number {
  return Number(value.toFixed(DECIMALS)) + 0;
}

/** The same data with every number in it rounded; order of keys is kept, nothing is changed in place. */
export function roundNumbers<T>(data: T): T;
export function roundNumbers(data: unknown): unknown {
  if (typeof data === 'number') return roundNumber(data);
  if (Array.isArray(data)) return data.map((entry) => roundNumbers(entry));
  if (typeof data !== 'object' || data === null) return data;
  return Object.fromEntries(Object.entries(data).map(([key, value]) => [key, roundNumbers(value)]));
}

/** Its four numbers and nothing else that it may carry. */
export function roundRect({ x, y, width, height }: RectMm): object {
  return roundNumbers({ x, y, width, height });
}

/**
 * A measured value and its limit, rounded together. Where rounding would carry the value across the limit (2.9999999
 * against at least 3) both stay as they are: a reader who compares them must come to the verdict that was given.
 */
export function roundBeside(
  actual: Quantity,
  expected: Range,
): { readonly actual: Quantity; readonly expected: Range } {
  const rounded = { actual: roundNumbers(actual), expected: roundNumbers(expected) };
  return sideOf(rounded.actual, rounded.expected) === sideOf(actual, expected)
    ? rounded
    : { actual, expected };
}

function sideOf(
  { value }: Quantity,
  { min = -Infinity, max = Infinity }: Range,
): 'below' | 'within' | 'above' {
  if (value < min) return 'below';
  return value > max ? 'above' : 'within';
}
