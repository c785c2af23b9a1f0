import type { ArtworkFormat, StatedPpi } from './artwork.ts';
import type { PrintRecord } from './print-record.ts';

/** One thing of a print-ready file that is not as the program wrote it. */
export type InspectionChange =
  /** Saved in a format that print-ready files never have. */
  | { readonly code: 'another-format' }
  | {
      readonly code: 'size-in-pixels';
      readonly expectedPx: { readonly width: number; readonly height: number };
    }
  | { readonly code: 'pixels' }
  | { readonly code: 'density'; readonly expectedPpi: StatedPpi }
  | { readonly code: 'density-lost'; readonly expectedPpi: StatedPpi }
  | { readonly code: 'profile'; readonly expected: string }
  | { readonly code: 'profile-lost'; readonly expected: string }
  /** A tag that turns or mirrors the picture where programs obey it; 2 to 8 as in EXIF. */
  | { readonly code: 'orientation'; readonly orientation: number }
  | { readonly code: 'pages'; readonly pages: number }
  /** Of a PDF: pictures, marks, pages or colours; its seal does not say which. */
  | { readonly code: 'document' };

/**
 * `unchanged`: it prints as it was written. `record-damaged`: it was one, but what it says of itself cannot be read any
 * more. `not-print-ready`: it carries no record of this program, or has lost it. `unreadable`: no picture can be read.
 */
export type InspectionVerdict =
  | 'unchanged'
  | 'changed'
  | 'proof'
  | 'record-damaged'
  | 'not-print-ready'
  | 'unreadable';

/** What a file says of itself, what it is, and how far the two agree. */
export interface Inspection {
  readonly verdict: InspectionVerdict;
  /** Hex SHA-256 of the bytes; null where none could be had. */
  readonly sha256: string | null;
  /** null where no picture can be read, and so are the next three. */
  readonly format: ArtworkFormat | 'pdf' | null;
  /** As displayed: an orientation tag, which is a change, is obeyed. */
  readonly widthPx: number | null;
  readonly heightPx: number | null;
  /** null also where the file states none. */
  readonly statedPpi: StatedPpi | null;
  /** The size that the file prints at by its own density, or that of the first page; null where it states none. */
  readonly trueSizeMm: { readonly width: number; readonly height: number } | null;
  /** Of a PDF, which has no pixels of its own. */
  readonly pages?: number;
  readonly record: PrintRecord | null;
  /** Empty unless the verdict is `changed`, or `proof` and it was changed too. */
  readonly changes: readonly InspectionChange[];
  /** Why no picture can be read; null where one can. */
  readonly error: { readonly code: string; readonly message: string } | null;
}
