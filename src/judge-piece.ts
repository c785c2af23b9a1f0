import { setImmediate } from 'node:timers/promises';
import { conditionFor, judgePicture, type PrintRequest, pictureArtwork } from './check-artwork.ts';
import { type ComposedPrint, composeArtwork } from './compose-artwork.ts';
import { warmColourTables } from './conditions/colour-tables.ts';
import { findPage, showsOnPaper } from './find-page.ts';
import type { RectMm } from './geometry/rectangle.ts';
import type { Sector } from './geometry/sector.ts';
import { arcWithBleedOf, paperBoxesOf } from './job/paper.ts';
import { mendArtwork } from './mend-artwork.ts';
import type { ReadOptions } from './read-artwork.ts';
import { type ArtworkSource, readOrReport } from './read-or-report.ts';
import { reportChecked } from './report-artwork.ts';
import { labelPiece } from './reports/piece-label.ts';
import type { ArtworkReport } from './reports/report.ts';
import { rollOf } from './roll-paper.ts';
import type { SinglePiece } from './sheet/plan-page.ts';

/** What of a judged artwork goes on a sheet: its print-ready picture, and boxes in mm on the blank. */
export interface PrintedPiece {
  readonly print: ComposedPrint;
  /** Of the artwork's bytes. */
  readonly sha256: string;
  readonly outlineMm: RectMm;
  readonly bleedMm: RectMm;
  readonly printedMm: RectMm;
  /** Whether it reads backwards on the paper. */
  readonly mirrored: boolean;
  readonly label: readonly string[];
  /** Of a tapered body, unless the background is printed too: the paper and its bleed, an arc that fills the bleed's box. */
  readonly arc?: Sector;
  /** Lines that the paper of a round body is cut and rolled by. */
  readonly roll?: SinglePiece['roll'];
}

export interface JudgedPiece {
  readonly report: ArtworkReport;
  /** null where it is to be left out: unreadable, nothing printed, or a verdict of stop (without `anyway`). */
  readonly printed: PrintedPiece | null;
}

export interface JudgePieceOptions extends ReadOptions {
  /** Print it although the verdict is stop. */
  readonly anyway?: boolean;
}

/**
 * Reads, mends and judges an artwork for a sheet, and makes its print-ready picture once, however often it is printed.
 * @throws BlankcheckError of kind `usage` for a request that cannot be met, the signal's reason when it was aborted.
 */
export async function judgePiece(
  source: ArtworkSource,
  asked: PrintRequest,
  options: JudgePieceOptions = {},
): Promise<JudgedPiece> {
  const condition = await conditionFor(asked);
  const whileDecoding = () => warmColourTables(condition.profile, asked.conversion);
  const read = await readOrReport(source, asked, { ...options, whileDecoding });
  if ('report' in read) return { report: read.report, printed: null };
  const given = read.artwork;
  const { artwork, mends, request: mended } = await mendArtwork(given, { ...asked, condition }, options);
  const request = { ...mended, condition };
  const pictured = await pictureArtwork(artwork, request, options);
  await setImmediate();
  const checked = await judgePicture(artwork, pictured, request);
  options.signal?.throwIfAborted();
  const report = reportChecked(source.path, given, checked, request, mends);
  const printedMm = findPage(pictured.job, pictured.extents, request)?.printedMm;
  const wanted = report.status !== 'stop' || options.anyway === true;
  const { conversion } = request;
  const print =
    wanted && printedMm ? await composeArtwork(artwork, pictured, { ...options, conversion }) : null;
  if (print === null || !printedMm || pictured.job === null) return { report, printed: null };
  const { blank, placementMm } = pictured.job;
  const arc = showsOnPaper(request.background) ? null : arcWithBleedOf(blank);
  return {
    report,
    printed: {
      print,
      sha256: given.sha256,
      ...paperBoxesOf(blank),
      ...(arc && { arc }),
      ...rollOf(blank, request.dummy),
      printedMm,
      mirrored: blank.surface === 'first',
      label: labelPiece(source.path, request.blank, placementMm),
    },
  };
}
