import type { Temperature } from './heat.ts';
import type { Defect, Pressure } from './vocabulary.ts';

/** How a piece was pressed, as far as it was written down. */
export interface PressedRecipe {
  /** As the press was set. */
  readonly temperature?: Temperature;
  /** As measured on the platen. */
  readonly platenTemperature?: Temperature;
  readonly timeS?: number;
  readonly pressure?: Pressure;
}

/** One pressed piece, and how it came out: a line of a ledger. What was not written down is left out, never guessed. */
export interface Pressing {
  readonly schemaVersion: 1;
  /** An instant in UTC, or the day alone (ISO 8601). */
  readonly at: string;
  readonly blank: {
    readonly id: string;
    readonly name?: string;
    readonly lot?: string;
    readonly measured?: string;
  };
  /** The hash is that of the artwork; of a print-ready file, of the artwork that it was made from. */
  readonly art?: { readonly file: string; readonly sha256: string };
  readonly printer?: string;
  readonly paper?: string;
  readonly recipe: PressedRecipe;
  /** 1 (lost) to 5 (as good as it gets). */
  readonly result: number;
  readonly defects: readonly Defect[];
  /** The hash is null where the file was not there. */
  readonly photo?: { readonly file: string; readonly sha256: string | null };
  readonly note?: string;
}

/** A pressing and the line it stands on, counted from 1. */
export interface LedgerEntry {
  readonly line: number;
  readonly pressing: Pressing;
}

/** The line of a ledger, without its line end: JSON has none inside (RFC 8259, 7). */
export function writePressing(pressing: Pressing): string {
  return JSON.stringify(pressing);
}
