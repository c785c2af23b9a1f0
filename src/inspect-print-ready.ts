import { createHash } from 'node:crypto';
import { BlankcheckError } from './blankcheck-error.ts';
import { findChanges } from './formats/find-changes.ts';
import { findXmp } from './formats/find-xmp.ts';
import type { Inspection, InspectionChange, InspectionVerdict } from './formats/inspection.ts';
import { type Limits, limitsWith } from './formats/limits.ts';
import { isPdfAsWritten, listPdfPagesMm, looksLikePdf } from './formats/pdf-seal.ts';
import { type PrintRecord, readPrintRecord } from './formats/print-record.ts';
import { PRINT_RECORD_NAMESPACE } from './formats/print-record-xmp.ts';
import { readStoredPicture, type StoredPicture } from './formats/read-stored-picture.ts';
import { requireFormat } from './formats/sniff.ts';
import { MM_PER_INCH } from './geometry/length.ts';

export interface InspectOptions {
  /** Replaces single limits of the table. */
  readonly limits?: Partial<Limits>;
  readonly signal?: AbortSignal;
}

/**
 * What a print-ready PNG, TIFF or PDF is, and whether anything that is printed was changed since the program wrote it:
 * samples, density, profile, orientation, pages; of a PDF whether any object of it was. Other notes in the file may come and go. Bytes that are no picture, or
 * no whole one, give the verdict `unreadable` with the record that they still hold. @throws the signal's reason only
 */
export async function inspectPrintReady(
  bytes: Uint8Array,
  options: InspectOptions = {},
): Promise<Inspection> {
  const { signal } = options;
  signal?.throwIfAborted();
  const limits = limitsWith(options.limits);
  const record = readPrintRecord(bytes);
  const sha256 = createHash('sha256').update(bytes).digest('hex');
  const nothing = { sha256, record, format: null, widthPx: null, heightPx: null, statedPpi: null };
  if (looksLikePdf(bytes)) return { ...nothing, ...inspectPdf(bytes, record) };
  try {
    // The limit of print-ready pictures is above that of artworks, and it may read what it wrote.
    const maxPixels = Math.max(limits.maxPixels, limits.maxCanvasPixels);
    const format = requireFormat(bytes);
    if (format === 'svg')
      return { ...nothing, verdict: 'not-print-ready', format, trueSizeMm: null, changes: [], error: null };
    const picture = await readStoredPicture(format, bytes, { ...limits, maxPixels }, signal);
    const changes = record ? findChanges(picture, format, record) : [];
    const verdict = judge(bytes, record, changes.length > 0);
    return { ...nothing, verdict, format, ...measure(picture), changes, error: null };
  } catch (error) {
    if (!(error instanceof BlankcheckError)) throw error;
    const { code, message } = error;
    return { ...nothing, verdict: 'unreadable', trueSizeMm: null, changes: [], error: { code, message } };
  }
}

function judge(bytes: Uint8Array, record: PrintRecord | null, isChanged: boolean): InspectionVerdict {
  if (record === null)
    return findXmp(bytes, PRINT_RECORD_NAMESPACE).length > 0 ? 'record-damaged' : 'not-print-ready';
  if (record.kind === 'proof') return 'proof';
  return isChanged ? 'changed' : 'unchanged';
}

/** Its pictures are not unpacked: its identifier seals them, the marks and the pages alike. */
function inspectPdf(bytes: Uint8Array, record: PrintRecord | null) {
  const changes: InspectionChange[] = record && !isPdfAsWritten(bytes) ? [{ code: 'document' }] : [];
  const sizes = listPdfPagesMm(bytes);
  return {
    verdict: judge(bytes, record, changes.length > 0),
    format: 'pdf',
    trueSizeMm: sizes[0] ?? null,
    pages: sizes.length,
    changes,
    error: null,
  } as const;
}

function measure({ raster: { widthPx, heightPx }, statedPpi }: StoredPicture) {
  const trueSizeMm = statedPpi && {
    width: (widthPx / statedPpi.x) * MM_PER_INCH,
    height: (heightPx / statedPpi.y) * MM_PER_INCH,
  };
  return { widthPx, heightPx, statedPpi, trueSizeMm };
}
