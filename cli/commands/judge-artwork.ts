import { resolve } from 'node:path';
import {
  type ArtworkReport,
  BlankcheckError,
  type Limits,
  type Preflight,
  type PrintRequest,
  preflight,
  readPrintRecord,
  reportUnreadable,
} from '../../src/index.ts';
import type { PlannedArtwork } from '../inputs/planned-artwork.ts';
import type { ArtworkReader } from '../inputs/read-artworks.ts';
import type { InputGuard } from '../output/input-guard.ts';
import { fileExists, isTaken, publishFile } from '../output/publish-file.ts';
import type { TempFiles } from '../output/temp-files.ts';

/** How every artwork of a run is judged. */
export interface JudgeOptions {
  readonly request: PrintRequest;
  readonly format: 'png' | 'tiff';
  readonly writes: boolean;
  readonly anyway: boolean;
  readonly force: boolean;
  readonly cwd: string;
  readonly signal: AbortSignal;
  readonly limits: Partial<Limits>;
  readonly reader: ArtworkReader;
  readonly guard: InputGuard;
  readonly temps: TempFiles;
}

export interface JudgedPlace {
  /** Where its print-ready file goes, as it is told; undefined where there are no bytes to make one from. */
  readonly output: string | undefined;
  /** Files of our own are passed over where nobody named them. */
  readonly skipOwn: boolean;
}

/**
 * Reads one artwork, checks it and writes its print-ready file; null where it is a print-ready file to pass over.
 * What cannot be read or written is told in the report.
 * @throws BlankcheckError of kind `usage` for a request that cannot be met; whatever aborted the signal.
 */
export async function judgeArtwork(
  artwork: PlannedArtwork,
  { output, skipOwn }: JudgedPlace,
  options: JudgeOptions,
): Promise<ArtworkReport | null> {
  const { request, format, anyway, signal, limits, reader } = options;
  let bytes: Uint8Array;
  try {
    bytes = await reader.read(artwork);
  } catch (error) {
    if (!(error instanceof BlankcheckError)) throw error;
    return reportUnreadable({ path: artwork.path, bytes: null }, error, request);
  }
  if (skipOwn && readPrintRecord(bytes)) return null;
  const target = options.writes && output !== undefined ? output : null;
  const refusal = target === null ? null : await findRefusal(target, options);
  const write = target !== null && refusal === null;
  const judged = await preflight({ path: artwork.path, bytes }, request, {
    write,
    anyway,
    signal,
    limits,
    format,
  });
  if (refusal && isWritable(judged.report, anyway)) return notWritten(judged.report, refusal);
  return target === null ? judged.report : publish(judged, target, options);
}

/** Why nothing may be written there, known before a pixel is resampled; null where it may. */
async function findRefusal(
  target: string,
  { cwd, force, guard }: JudgeOptions,
): Promise<BlankcheckError | null> {
  const path = resolve(cwd, target);
  if (!force) return (await isTaken(path)) ? fileExists(target) : null;
  try {
    await guard.refuseInput(path, target);
    return null;
  } catch (error) {
    if (error instanceof BlankcheckError) return error;
    throw error;
  }
}

function isWritable({ status, plan }: ArtworkReport, anyway: boolean): boolean {
  return plan.length > 0 && (status === 'ready' || status === 'look' || (status === 'stop' && anyway));
}

async function publish(
  { report, printReady }: Preflight,
  target: string,
  options: JudgeOptions,
): Promise<ArtworkReport> {
  if (printReady === null) return report;
  const { force, temps, signal, cwd } = options;
  try {
    await publishFile({ path: resolve(cwd, target), told: target }, printReady.bytes, {
      replace: force,
      temps,
      signal,
    });
  } catch (error) {
    if (error instanceof BlankcheckError) return notWritten(report, error);
    throw error;
  }
  const { widthPx, heightPx, widthMm, heightMm, ppi, mirrored } = printReady.plan;
  return { ...report, output: { path: target, widthPx, heightPx, widthMm, heightMm, ppi, mirrored } };
}

function notWritten(report: ArtworkReport, { code, message }: BlankcheckError): ArtworkReport {
  return { ...report, error: { code, message } };
}
