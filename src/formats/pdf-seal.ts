import { createHash } from 'node:crypto';
import { MM_PER_INCH } from '../geometry/length.ts';

/** The identifier of a PDF of ours: of all that lies before its cross-references, 128 bits in hex. */
export function hashPdfObjects(parts: readonly Uint8Array[]): string {
  const hash = createHash('sha256');
  for (const part of parts) hash.update(part);
  return hash.digest('hex').slice(0, 32);
}

export function looksLikePdf(bytes: Uint8Array): boolean {
  return latin(bytes.subarray(0, 5)) === '%PDF-';
}

/**
 * Whether header and objects of a PDF are still those that its identifier was made of. Tells nothing of a PDF of others,
 * whose identifiers are made otherwise. What was added behind the end counts as a change too.
 * @see ISO 32000-1:2008, 7.5.5 (trailer), 7.5.6 (incremental updates), 14.4 (file identifiers)
 */
export function isPdfAsWritten(bytes: Uint8Array): boolean {
  const end = latin(bytes.subarray(Math.max(0, bytes.length - FOOT_BYTES)));
  const start = /startxref\n(\d+)\n%%EOF\n$/.exec(end);
  const id = /\/ID \[<([0-9a-f]{32})> <\1>\]>>\nstartxref\n\d+\n%%EOF\n$/.exec(end);
  if (!start || !id) return false;
  const at = Number(start[1]);
  if (at >= bytes.length) return false;
  // One end only: an update keeps the old one, and adds its own.
  const isOnlyEnd = latin(bytes.subarray(at)).split('%%EOF').length === 2;
  return isOnlyEnd && hashPdfObjects([bytes.subarray(0, at)]) === id[1];
}

/** Sizes of the pages of a PDF of ours, in mm, in its order; those of others may keep them where they are not found. */
export function listPdfPagesMm(
  bytes: Uint8Array,
): readonly { readonly width: number; readonly height: number }[] {
  const buffer = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.length);
  const sizes: { width: number; height: number }[] = [];
  for (let at = buffer.indexOf(MEDIA_BOX); at !== -1; at = buffer.indexOf(MEDIA_BOX, at + 1)) {
    const box = /^\/MediaBox \[0 0 ([\d.]+) ([\d.]+)\]/.exec(latin(bytes.subarray(at, at + 80)));
    if (box) sizes.push({ width: millimetres(box[1]!), height: millimetres(box[2]!) });
  }
  return sizes;
}

const MEDIA_BOX = '/MediaBox ';
/** Trailer and end are shorter (derived from what is written there). */
const FOOT_BYTES = 1024;

const millimetres = (points: string) => (Number(points) / 72) * MM_PER_INCH;

function latin(bytes: Uint8Array): string {
  return Buffer.from(bytes.buffer, bytes.byteOffset, bytes.length).toString('latin1');
}
