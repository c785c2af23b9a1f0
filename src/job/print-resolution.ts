import { BlankcheckError } from '../blankcheck-error.ts';
import { practiceLimit } from '../catalogue/practice.ts';

/** Pixels per inch of a print-ready file when nobody says otherwise. */
export const DEFAULT_PPI = practiceLimit('print-resolution').value;
/** Most pixels per inch that may be asked for. */
export const MAX_PPI = practiceLimit('print-resolution-most').value;

/** The same number. @throws BlankcheckError `ppi-out-of-range` below 1, above the most, and for what is no number. */
export function checkPpi(ppi: number): number {
  if (ppi >= 1 && ppi <= MAX_PPI) return ppi;
  throw new BlankcheckError(
    'ppi-out-of-range',
    `Expected 1 to ${MAX_PPI} pixels per inch for --ppi, received ${ppi}.\nGive a number in that range, or leave it out: most printers are sent ${DEFAULT_PPI}.`,
  );
}
