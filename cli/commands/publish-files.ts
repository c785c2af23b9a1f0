import {
  type ArtworkReport,
  type BlankcheckError,
  type PieceView,
  type Preflight,
  picturePiece,
} from '../../src/index.ts';
import type { JudgeOptions } from './judge-artwork.ts';
import { publish, type Target } from './output-target.ts';

/** Writes the print-ready file, if there is one, and tells it or why it could not be written. */
export async function publishPrint(
  { report, printReady }: Preflight,
  target: Target,
  options: JudgeOptions,
): Promise<ArtworkReport> {
  const refused = isPrintable(report, options.anyway) ? target.refusal : null;
  const error = printReady ? await publish(target, printReady.bytes, options) : refused;
  if (error) return { ...report, error: { code: error.code, message: error.message } };
  if (printReady === null || target.path === null) return report;
  const { widthMm, heightMm, ppi, mirrored } = printReady.plan;
  const { sheet } = report;
  const { widthPx, heightPx } = sheet ?? printReady.plan;
  const sizeMm = sheet
    ? { widthMm: sheet.sizeMm.width, heightMm: sheet.sizeMm.height }
    : { widthMm, heightMm };
  return { ...report, output: { path: target.path, widthPx, heightPx, ...sizeMm, ppi, mirrored } };
}

/** The verdict decides on the print-ready file only: a proof shows what is wrong too. */
export async function publishProof(
  report: ArtworkReport,
  { proof }: Preflight,
  target: Target,
  options: JudgeOptions,
): Promise<ArtworkReport> {
  const refused = report.plan.length > 0 ? target.refusal : null;
  const error = proof ? await publish(target, proof.bytes, options) : refused;
  if (error) return { ...report, proofError: { code: error.code, message: error.message } };
  if (proof === null || target.path === null) return report;
  const { widthPx, heightPx, ppi, marked } = proof;
  return { ...report, proof: { path: target.path, widthPx, heightPx, ppi, marked } };
}

/** Drawn last, so that it tells what became of the file too. */
export async function publishPicture(
  report: ArtworkReport,
  view: PieceView | null,
  target: Target,
  options: JudgeOptions,
): Promise<ArtworkReport> {
  if (target.refusal) return withPictureError(report, target.refusal);
  if (view === null || target.path === null) return report;
  const { bytes, widthPx, heightPx } = await picturePiece({ report, view });
  const error = await publish(target, bytes, options);
  return error
    ? withPictureError(report, error)
    : { ...report, picture: { path: target.path, widthPx, heightPx } };
}

function withPictureError(report: ArtworkReport, { code, message }: BlankcheckError): ArtworkReport {
  return { ...report, picture: { error: { code, message } } };
}

function isPrintable({ status, plan }: ArtworkReport, anyway: boolean): boolean {
  return plan.length > 0 && (status === 'ready' || status === 'look' || (status === 'stop' && anyway));
}
