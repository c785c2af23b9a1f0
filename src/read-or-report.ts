import { createHash } from 'node:crypto';
import { BlankcheckError } from './blankcheck-error.ts';
import { familyOf } from './catalogue/catalogue.ts';
import type { PrintRequest } from './check-artwork.ts';
import type { Artwork } from './formats/artwork.ts';
import { sniffFormat } from './formats/sniff.ts';
import { type HashedStandIn, STAND_IN_BYTES, type StandIn } from './formats/stand-in.ts';
import { resolveBlank } from './job/resolve-blank.ts';
import type { ReadOptions } from './read-artwork.ts';
import { readForPrint } from './read-for-print.ts';
import { reportUnreadable } from './report-artwork.ts';
import type { ArtworkReport } from './reports/report.ts';

/** Where an artwork comes from. */
export interface ArtworkSource {
  /** What it is called; nothing is read from there. */
  readonly path: string;
  readonly bytes: Uint8Array;
  /** A file that holds these very bytes: of 64 MiB and more of them the picture is decoded from there, and they are let go. */
  readonly standIn?: StandIn | null;
}

export type ArtworkOrReport = { readonly artwork: Artwork } | { readonly report: ArtworkReport };

/**
 * The artwork, or a report of status `unreadable` where its bytes are of no use.
 * @throws BlankcheckError of kind `usage` for a request that cannot be met, the signal's reason when it was aborted.
 */
export async function readOrReport(
  { path, bytes, standIn: file }: ArtworkSource,
  request: PrintRequest,
  options: ReadOptions,
): Promise<ArtworkOrReport> {
  // Before any byte is read: a request that cannot be met costs no decoding.
  resolveBlank(request, familyOf(request.blank));
  const standIn = file && bytes.length >= STAND_IN_BYTES ? withHash(file, bytes) : null;
  const format = sniffFormat(bytes);
  try {
    return { artwork: await readForPrint(bytes, request, { ...options, ...(standIn && { standIn }) }) };
  } catch (error) {
    if (!(error instanceof BlankcheckError && error.kind === 'artwork')) throw error;
    const known = standIn && { sha256: standIn.sha256, format };
    return { report: reportUnreadable({ path, bytes, ...known }, error, request) };
  }
}

function withHash(file: StandIn, bytes: Uint8Array): HashedStandIn {
  return { ...file, sha256: createHash('sha256').update(bytes).digest('hex') };
}
