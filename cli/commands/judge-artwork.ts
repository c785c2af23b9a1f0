import {
  type ArtworkReport,
  BlankcheckError,
  type CostInputs,
  type Limits,
  type PieceView,
  type Preflight,
  type PreflightOptions,
  type PrintReadyFormat,
  type PrintRequest,
  type ProofRequest,
  preflight,
  readPrintRecord,
  reportUnreadable,
  viewBareBlank,
} from '../../src/index.ts';
import { namesBeside, type ReadFormat, readBestFormat, tellInsteadOf } from '../inputs/choose-format.ts';
import type { PlannedArtwork } from '../inputs/planned-artwork.ts';
import type { ArtworkReader } from '../inputs/read-artworks.ts';
import type { InputGuard } from '../output/input-guard.ts';
import type { OutFolders } from '../output/out-folders.ts';
import type { OutputPaths } from '../output/output-paths.ts';
import type { TempFiles } from '../output/temp-files.ts';
import { findTarget } from './output-target.ts';
import { publishPicture, publishPrint, publishProof } from './publish-files.ts';

/** How every artwork of a run is judged. */
export interface JudgeOptions {
  readonly request: PrintRequest;
  readonly format: PrintReadyFormat;
  readonly writes: boolean;
  /** null where no proof is asked for. */
  readonly proof: ProofRequest | null;
  /** Pictures for a page are asked for. */
  readonly view: boolean;
  /** An annotated picture is asked for. */
  readonly picture: boolean;
  /** null where no cost is asked for. */
  readonly cost: CostInputs | null;
  readonly anyway: boolean;
  readonly force: boolean;
  readonly cwd: string;
  readonly signal: AbortSignal;
  readonly limits: Partial<Limits>;
  readonly reader: ArtworkReader;
  readonly guard: InputGuard;
  readonly temps: TempFiles;
  readonly folders: OutFolders;
}

/** What became of an artwork, and its pictures for a page where they are asked for. */
export interface JudgedArtwork {
  readonly report: ArtworkReport;
  readonly view: PieceView | null;
  /** The fault of the program that the report is of; left out where there was none. */
  readonly fault?: unknown;
}

export interface JudgedPlace {
  /** Where its files go; undefined where there are no bytes to make one from. */
  readonly outputs: OutputPaths | undefined;
  /** Files of our own are passed over where nobody named them. */
  readonly skipOwn: boolean;
  /** What lies there was made of this artwork, and gives way to what it is now. */
  readonly mayReplace?: boolean;
}

/**
 * Reads one artwork, checks it and writes its print-ready file and its proof; null where it is a file of our own to
 * pass over. What cannot be read or written is told in the report.
 * @throws BlankcheckError of kind `usage` for a request that cannot be met; whatever aborted the signal.
 */
export async function judgeArtwork(
  artwork: PlannedArtwork,
  { outputs, skipOwn, mayReplace }: JudgedPlace,
  asked: JudgeOptions,
): Promise<JudgedArtwork | null> {
  const options = mayReplace === true ? { ...asked, force: true } : asked;
  const { request, format, anyway, signal, limits, reader, writes, proof, view, cost } = options;
  let read: ReadFormat;
  try {
    read = await readBestFormat(artwork, reader, { limits, signal });
  } catch (error) {
    if (!(error instanceof BlankcheckError)) throw error;
    const lost = reportUnreadable({ path: artwork.path, bytes: null }, error, request);
    const report = tellInsteadOf(lost, namesBeside(artwork, artwork.formats));
    const bare = view || options.picture ? viewBareBlank(request) : null;
    const picture = await findTarget(outputs?.picture, '--picture', options);
    return { report: await publishPicture(report, bare, picture, options), view: view ? bare : null };
  }
  if (skipOwn && read.bytes.look(readPrintRecord)) return null;
  const printTarget = await findTarget(writes ? outputs?.printReady : null, '--out', options);
  const proofTarget = await findTarget(proof && outputs?.proof, '--proof', options);
  const pictureTarget = await findTarget(outputs?.picture, '--picture', options);
  const preflighted = await start(read, request, {
    write: printTarget.path !== null,
    anyway,
    signal,
    limits,
    format,
    view,
    picture: options.picture && pictureTarget.path !== null,
    ...(cost && { cost }),
    ...(proof && proofTarget.path !== null ? { proof } : {}),
  });
  const judged = {
    ...preflighted,
    report: tellInsteadOf(preflighted.report, read.insteadOf, read.unreadableBeside),
  };
  const written = await publishPrint(judged, printTarget, options);
  const proofed = await publishProof(written, judged, proofTarget, unlessBegun(written, options));
  const report = await publishPicture(
    proofed,
    judged.largeView,
    pictureTarget,
    unlessBegun(proofed, options),
  );
  return { report, view: judged.view };
}

/** Once one of its files has its name an artwork is finished, interrupted or not: what is written is told. */
function unlessBegun({ output, proof }: ArtworkReport, options: JudgeOptions): JudgeOptions {
  return output || proof ? { ...options, signal: new AbortController().signal } : options;
}

/** Starts and does not wait, so that nothing here keeps the bytes. */
function start(
  { artwork, bytes, standIn }: ReadFormat,
  request: PrintRequest,
  options: PreflightOptions,
): Promise<Preflight> {
  return preflight({ path: artwork.path, bytes: bytes.take(), standIn }, request, options);
}
