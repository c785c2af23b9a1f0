import { formatLength, formatMillimetres } from '../geometry/length.ts';
import type { Fact } from './finding.ts';

export type Side = 'left' | 'right' | 'top' | 'bottom' | 'corners';

const SIDES: readonly Side[] = ['left', 'right', 'top', 'bottom', 'corners'];

/** The side of the blank that a direction points to, as seen from the front. */
export function sideOf(directionX: number, directionY: number): Side {
  if (Math.abs(directionX) >= Math.abs(directionY)) return directionX < 0 ? 'left' : 'right';
  return directionY < 0 ? 'top' : 'bottom';
}

/** The worst value of each side that has one, as facts `leftMm`, `rightMm`, `topMm`, `bottomMm`, `cornersMm`. */
export function worstPerSide(
  values: readonly { readonly side: Side; readonly value: number }[],
  worst: 'smallest' | 'largest',
): Record<string, number> {
  const choose = worst === 'smallest' ? Math.min : Math.max;
  const facts: Record<string, number> = {};
  for (const side of SIDES) {
    const own = values.filter((entry) => entry.side === side).map(({ value }) => value);
    if (own.length > 0) facts[`${side}Mm`] = own.reduce((a, b) => choose(a, b));
  }
  return facts;
}

/** A tenth of a millimetre: no hand and no ruler tells less. */
const FINE_MM = 0.1;

/** A gap for people: `less than 0.1 mm` where its digits would mean nothing. */
export function formatGap(mm: number): string {
  return mm > 0 && mm < FINE_MM ? `less than ${formatMillimetres(FINE_MM)}` : formatLength(mm);
}

/** `left 1.2 mm (0.05 in), top 3 mm (0.12 in)` from the facts of worstPerSide. */
export function phraseSides(facts: Readonly<Record<string, Fact>>): string {
  return phraseEach(facts, formatLength);
}

/** The same for gaps. */
export function phraseGaps(facts: Readonly<Record<string, Fact>>): string {
  return phraseEach(facts, formatGap);
}

function phraseEach(facts: Readonly<Record<string, Fact>>, format: (mm: number) => string): string {
  return SIDES.filter((side) => typeof facts[`${side}Mm`] === 'number')
    .map((side) => `${side} ${format(Number(facts[`${side}Mm`]))}`)
    .join(', ');
}
