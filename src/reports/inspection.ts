import type { ArtworkFormat, StatedPpi } from '../formats/artwork.ts';
import type { PrintRecord } from '../formats/print-record.ts';

/**
 * What another program did to a print-ready file. `pixels`: other samples, or another number of them. `density`: it states
 * another size, or none. `profile`: its colours are said to be others, or nothing is said of them. `orientation`: it was
 * given a tag that turns or mirrors it; the samples are then not compared.
 */
export const PRINT_CHANGES = ['pixels', 'density', 'profile', 'orientation'] as const;
export type PrintChange = (typeof PRINT_CHANGES)[number];

/** What a file is that was taken for a print-ready one. */
export interface Inspection {
  readonly format: ArtworkFormat;
  /** Hex SHA-256 of the file. */
  readonly sha256: string;
  readonly widthPx: number;
  readonly heightPx: number;
  readonly statedPpi: StatedPpi | null;
  /** The size at which a program prints it that trusts the density; null where the file states none. */
  readonly statedMm: { readonly width: number; readonly height: number } | null;
  /** What the program wrote into it; null where it is no file of the program's, or its record was stripped. */
  readonly record: PrintRecord | null;
  /** In the order of `PRINT_CHANGES`; empty without a record, since there is nothing to compare with. */
  readonly changes: readonly PrintChange[];
}

/** One file that was inspected, or why it cannot be read. */
export interface InspectedFile {
  readonly path: string;
  readonly inspection: Inspection | null;
  readonly error: { readonly code: string; readonly message: string } | null;
}
