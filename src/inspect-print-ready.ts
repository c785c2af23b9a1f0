import { createHash } from 'node:crypto';
import { BlankcheckError } from './blankcheck-error.ts';
import { findChanges } from './formats/find-changes.ts';
import { findXmp } from './formats/find-xmp.ts';
import type { Inspection, InspectionVerdict } from './formats/inspection.ts';
import { type Limits, limitsWith } from './formats/limits.ts';
import { readPrintRecord } from './formats/print-record.ts';
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
 * What a print-ready PNG or TIFF is, and whether anything that is printed was changed since the program wrote it:
 * samples, density, profile, orientation, pages. Other notes in the file may come and go. Bytes that are no picture, or
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
  try {
    // The limit of print-ready pictures is above that of artworks, and it may read what it wrote.
    const maxPixels = Math.max(limits.maxPixels, limits.maxCanvasPixels);
    const format = requireFormat(bytes);
    if (format === 'svg')
      return { ...nothing, verdict: 'not-print-ready', format, trueSizeMm: null, changes: [], error: null };
    const picture = await readStoredPicture(format, bytes, { ...limits, maxPixels }, signal);
    const changes = record ? findChanges(picture, format, record) : [];
    const verdict: InspectionVerdict = record
      ? judge(record.kind, changes.length > 0)
      : findXmp(bytes, PRINT_RECORD_NAMESPACE).length > 0
        ? 'record-damaged'
        : 'not-print-ready';
    return { ...nothing, verdict, format, ...measure(picture), changes, error: null };
  } catch (error) {
    if (!(error instanceof BlankcheckError)) throw error;
    const { code, message } = error;
    return { ...nothing, verdict: 'unreadable', trueSizeMm: null, changes: [], error: { code, message } };
  }
}

function judge(kind: 'proof' | undefined, isChanged: boolean): InspectionVerdict {
  if (kind === 'proof') return 'proof';
  return isChanged ? 'changed' : 'unchanged';
}

function measure({ raster: { widthPx, heightPx }, statedPpi }: StoredPicture) {
  const trueSizeMm = statedPpi && {
    width: (widthPx / statedPpi.x) * MM_PER_INCH,
    height: (heightPx / statedPpi.y) * MM_PER_INCH,
  };
  return { widthPx, heightPx, statedPpi, trueSizeMm };
}
