/**
 * Every mark of a page, the most needed first: in this order they take their room, so a page too full loses them from
 * the end. Ticks place the blank; ruler and witness find the two costliest faults before anything is pressed; the label
 * and the arrow tell pieces apart and which way up they go; the rest is comfort. The order is our own choice.
 */
export const MARK_KINDS = [
  'centre-ticks',
  'roll-lines',
  'ruler',
  'mirror-witness',
  'label',
  'up-arrow',
  'corner-marks',
  'nozzle-bars',
  'step-wedge',
] as const;

export type MarkKind = (typeof MARK_KINDS)[number];

/** Whether a page is to have no marks at all. */
export function isBare(without: readonly MarkKind[] = []): boolean {
  return MARK_KINDS.every((mark) => without.includes(mark));
}
