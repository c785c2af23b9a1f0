import type { PrinterMargins } from '../catalogue/printer-record.ts';

/** A printer with its record resolved: what was left out is filled in. */
export interface Printer {
  readonly name: string;
  /** The sheet it is set up for, portrait as it is fed. */
  readonly paper: { readonly id: string; readonly widthMm: number; readonly heightMm: number };
  readonly marginsMm: PrinterMargins;
  /** Undefined where the record does not say. */
  readonly ppi?: number;
  readonly scaleCorrection: { readonly scan: number; readonly feed: number };
  /** Path of an ICC file from the folder of the record. */
  readonly profile?: string;
  readonly driverMirrors: boolean;
}
