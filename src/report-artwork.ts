import { createHash } from 'node:crypto';
import { familyOf } from './catalogue/catalogue.ts';
import { type CheckedArtwork, isForPrinter, type PrintRequest } from './check-artwork.ts';
import type { Artwork, ArtworkFormat } from './formats/artwork.ts';
import { sniffFormat } from './formats/sniff.ts';
import { findInkedPart } from './job/find-inked-part.ts';
import type { BlankInHand } from './job/job.ts';
import { resolveBlank } from './job/resolve-blank.ts';
import { type Mended, reportMends } from './mend-artwork.ts';
import type { ArtworkReport } from './reports/report.ts';
import { statusOf } from './reports/status.ts';

export interface UnreadableSource {
  readonly path: string;
  /** null where not one byte could be had. */
  readonly bytes: Uint8Array | null;
  /** Of bytes that are no longer there, with their format. */
  readonly sha256?: string;
  readonly format?: ArtworkFormat | null;
}

/** The report of an artwork that could not be read. */
export function reportUnreadable(
  source: UnreadableSource,
  error: { readonly code: string; readonly message: string },
  request: PrintRequest,
): ArtworkReport {
  const bytes = source.bytes?.length ? source.bytes : null;
  return {
    artwork: {
      path: source.path,
      sha256: source.sha256 ?? (bytes && createHash('sha256').update(bytes).digest('hex')),
      format: source.format ?? (bytes && sniffFormat(bytes)),
      widthPx: null,
      heightPx: null,
      statedPpi: null,
    },
    status: 'unreadable',
    error: { code: error.code, message: error.message },
    contentBoxPx: null,
    blank: describeBlank(resolveBlank(request, familyOf(request.blank))),
    ...describePrinter(request),
    placementMm: null,
    ...describePaper(resolveBlank(request, familyOf(request.blank))),
    inkedMm: null,
    effectivePpi: null,
    outcomes: [],
    mends: [],
    plan: [],
    output: null,
    proof: null,
    proofError: null,
  };
}

/** The report of an artwork that was checked, before any file is written; `artwork` is that of the file, before any mend. */
export function reportChecked(
  path: string,
  artwork: Artwork,
  checked: CheckedArtwork,
  request: PrintRequest,
  mends: readonly Mended[] = [],
): ArtworkReport {
  const { raster, sha256, format, statedPpi } = artwork;
  return {
    artwork: { path, sha256, format, widthPx: raster.widthPx, heightPx: raster.heightPx, statedPpi },
    status: statusOf(checked.outcomes),
    error: null,
    contentBoxPx: checked.extents.contentBoxPx,
    blank: describeBlank(checked.blank),
    ...describePrinter(request),
    placementMm: checked.job?.placementMm ?? null,
    ...(checked.job?.copiesMm.length ? { copiesMm: checked.job.copiesMm } : {}),
    ...describePaper(checked.blank),
    colours: tellColours(artwork, request),
    inkedMm: checked.job && findInkedPart(checked.job, checked.extents),
    ...(request.dummy ? { dummy: true } : {}),
    effectivePpi: checked.job?.effectivePpi ?? null,
    outcomes: checked.outcomes,
    mends: reportMends(mends, checked.outcomes),
    plan: checked.plan?.steps ?? [],
    output: null,
    proof: null,
    proofError: null,
  };
}

function describePaper({ wrap }: BlankInHand): Pick<ArtworkReport, 'development'> {
  return wrap ? { development: wrap.development } : {};
}

function describePrinter({ printer }: PrintRequest): Pick<ArtworkReport, 'printer'> {
  if (printer === undefined) return {};
  const { name, driverMirrors, scaleCorrection } = printer;
  return { printer: { name, driverMirrors, scaleCorrection } };
}

function tellColours(artwork: Artwork, request: PrintRequest): NonNullable<ArtworkReport['colours']> {
  const { conversion } = request;
  if (!conversion) return { convertedBy: 'driver', tagged: 'sRGB' };
  const { name, sha256, profile, intent, blackPointCompensation } = conversion;
  return {
    convertedBy: 'file',
    tagged: name,
    profileSha256: sha256,
    space: profile.space === 'cmyk' ? 'cmyk' : 'rgb',
    intent,
    blackPointCompensation: blackPointCompensation && intent !== 'absolute',
    ...(isForPrinter(artwork, request) ? { unchanged: true } : {}),
  };
}

function describeBlank({ id, outline, edge, surface }: BlankInHand): ArtworkReport['blank'] {
  const { width, height } = edge.box;
  const smaller = width < outline.box.width || height < outline.box.height;
  return {
    id,
    widthMm: outline.box.width,
    heightMm: outline.box.height,
    surface,
    ...(smaller ? { printable: { widthMm: width, heightMm: height } } : {}),
  };
}
