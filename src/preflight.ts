import { setImmediate } from 'node:timers/promises';
import { conditionFor, judgePicture, type PrintRequest, pictureArtwork } from './check-artwork.ts';
import { planPageOf } from './compose-page.ts';
import { warmColourTables } from './conditions/colour-tables.ts';
import type { PrintingCondition } from './conditions/printing-condition.ts';
import type { CostInputs } from './costing/cost-inputs.ts';
import { costOfPiece } from './costing/cost-of-piece.ts';
import type { Artwork } from './formats/artwork.ts';
import { mendArtwork } from './mend-artwork.ts';
import type { PrintPlan } from './prepare/step.ts';
import { choosePrintReadyFormat, type PrintReadyFormat } from './print-ready-format.ts';
import type { Proof, ProofRequest } from './proof-artwork.ts';
import type { ReadOptions } from './read-artwork.ts';
import { type ArtworkOrReport, type ArtworkSource, readOrReport } from './read-or-report.ts';
import { reportChecked } from './report-artwork.ts';
import type { PieceView } from './reports/html/piece-view.ts';
import type { ArtworkReport } from './reports/report.ts';
import { startFiles } from './start-files.ts';
import { viewArt, viewBareBlank, viewPiece } from './view-piece.ts';

export interface PreflightOptions extends ReadOptions {
  /** Make the print-ready file; false only checks and plans. */
  readonly write: boolean;
  /** Make it although the verdict is stop. */
  readonly anyway?: boolean;
  readonly format?: PrintReadyFormat;
  /** Make a proof too, whatever the verdict. */
  readonly proof?: ProofRequest;
  /** Tell what a good piece costs too, whatever the verdict. */
  readonly cost?: CostInputs;
  /** Make the small pictures of a page too, whatever the verdict. */
  readonly view?: boolean;
  /** Make what `picturePiece` draws from too, whatever the verdict. */
  readonly picture?: boolean;
}

export interface Preflight {
  /** `output` and `proof` are null: whoever writes the files says where they went. */
  readonly report: ArtworkReport;
  /** null when not asked for, when the verdict is stop (without `anyway`), and when nothing can be printed. */
  readonly printReady: { readonly bytes: Uint8Array; readonly plan: PrintPlan } | null;
  /** null when not asked for, and when nothing can be printed. */
  readonly proof: Proof | null;
  /** null when not asked for; the bare blank where nothing can be read or printed. */
  readonly view: PieceView | null;
  /** The art alone, larger; null when not asked for, the bare blank as in `view`. */
  readonly largeView: PieceView | null;
}

/**
 * The one call most people need: artwork in; verdict, plan and print-ready bytes out. Touches no disk.
 * Bytes that cannot be read give a report with status `unreadable`, not an exception.
 * @throws BlankcheckError of kind `usage` for a request that cannot be met, the signal's reason when it was aborted.
 */
export function preflight(
  source: ArtworkSource,
  request: PrintRequest,
  options: PreflightOptions = { write: false },
): Promise<Preflight> {
  // Whoever waits keeps all that it was given: this only starts, so that the bytes may go while the art is judged.
  return judgeWhenRead(source.path, startReading(source, request, options), request, options);
}

async function judgeWhenRead(
  path: string,
  reading: Promise<ReadSource>,
  request: PrintRequest,
  options: PreflightOptions,
): Promise<Preflight> {
  const { read, condition, format } = await reading;
  if ('report' in read) {
    const bare = options.view || options.picture ? viewBareBlank(request) : null;
    const [view, largeView] = [options.view, options.picture].map((isAsked) => (isAsked ? bare : null));
    return { report: read.report, printReady: null, proof: null, view: view!, largeView: largeView! };
  }
  return judge(path, read.artwork, { ...request, condition }, { ...options, format });
}

interface ReadSource {
  readonly read: ArtworkOrReport;
  readonly condition: PrintingCondition;
  readonly format: PrintReadyFormat;
}

async function startReading(
  source: ArtworkSource,
  request: PrintRequest,
  options: PreflightOptions,
): Promise<ReadSource> {
  const { background, sheet } = request;
  const format = choosePrintReadyFormat(request.conversion, { format: options.format, background, sheet });
  const condition = await conditionFor(request);
  const whileDecoding = () => warmColourTables(condition.profile, request.conversion);
  return { read: await readOrReport(source, request, { ...options, whileDecoding }), condition, format };
}

type JudgedRequest = PrintRequest & { readonly condition: PrintingCondition };

async function judge(
  path: string,
  given: Artwork,
  asGiven: JudgedRequest,
  options: PreflightOptions,
): Promise<Preflight> {
  const mended = await mendArtwork(given, asGiven, options);
  const { artwork, mends } = mended;
  const request: JudgedRequest = { ...mended.request, condition: asGiven.condition };
  const pictured = await pictureArtwork(artwork, request, options);
  options.signal?.throwIfAborted();
  const page = planPageOf(path, pictured, request);
  const { early, drawProof, coverage } = await startFiles(artwork, pictured, page, request, {
    ...options,
    // A sheet that does not take the piece is not replaced by another kind of file.
    write: options.write && (page !== null || request.sheet === undefined),
  });
  early?.catch(() => undefined);
  await setImmediate();
  const checked = await judgePicture(artwork, pictured, request);
  const report = {
    ...reportChecked(path, given, checked, request, mends),
    ...(page && { sheet: page }),
    ...tellCost(options.cost, coverage, checked.plan),
  };
  const proof = await drawProof?.();
  const view = options.view ? await viewPiece(artwork, pictured, request) : null;
  const largeView = options.picture ? await viewArt(artwork, pictured, request) : null;
  const bytes = await early;
  const wanted = report.status !== 'stop' || options.anyway === true;
  const { plan } = checked;
  const printReady = wanted && bytes && plan ? { plan, bytes } : null;
  return { report, printReady, proof: proof ?? null, view, largeView };
}

function tellCost(
  inputs: CostInputs | undefined,
  coverage: number | null,
  plan: PrintPlan | null,
): Pick<ArtworkReport, 'cost'> {
  if (!inputs || coverage === null || plan === null) return {};
  return { cost: costOfPiece(inputs, { coverage, areaMm2: plan.widthMm * plan.heightMm }) };
}
