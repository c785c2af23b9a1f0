import { familyOf } from './catalogue/catalogue.ts';
import type { CheckDefinition, PrintPicture } from './checks/define-check.ts';
import type { Outcome } from './checks/finding.ts';
import { CHECKS } from './checks/index.ts';
import { runChecks } from './checks/run.ts';
import { DEFAULT_CONDITION, loadCondition } from './conditions/load-condition.ts';
import type { PrinterConversion } from './conditions/printer-conversion.ts';
import type { PrintingCondition } from './conditions/printing-condition.ts';
import { findPage } from './find-page.ts';
import type { Artwork } from './formats/artwork.ts';
import { resample } from './formats/resample.ts';
import { MM_PER_INCH } from './geometry/length.ts';
import { middleOf, type PointPx } from './geometry/rectangle.ts';
import { SRGB_PROFILE } from './icc/srgb-profile.ts';
import type { BlankInHand, Job } from './job/job.ts';
import type { JobRequest } from './job/job-request.ts';
import { hasConvexEdge } from './job/lines.ts';
import { placeArt } from './job/place-art.ts';
import { resolveBlank } from './job/resolve-blank.ts';
import type { ExtendHow } from './mends/define-mend.ts';
import { MENDS } from './mends/index.ts';
import { scaleArt } from './prepare/carry-out.ts';
import { planPrint } from './prepare/plan.ts';
import type { Background, PrintPlan } from './prepare/step.ts';
import type { Printer } from './printers/printer.ts';
import { makeArtTest } from './raster/art-test.ts';
import { findExtents } from './raster/find-extents.ts';
import { listOutlinePoints } from './raster/outline-points.ts';
import type { Raster } from './raster/raster.ts';
import type { Extents } from './raster/survey.ts';
import { conditionOf } from './read-printer-profile.ts';
import type { MarkKind } from './sheet/marks/mark-kinds.ts';
import type { Paper } from './sheet/paper.ts';

/** What is asked for: a job, and how its print-ready file is made. */
export interface PrintRequest extends JobRequest {
  /** What fills the padding; white by default. */
  readonly background?: Background;
  /** The printer the file is for; an unknown one when left out. */
  readonly printer?: Printer;
  /** The paper of a whole page; the file is the piece alone when left out. */
  readonly sheet?: Paper;
  /** Marks that the page shall not have; all that find room when left out. */
  readonly omitMarks?: readonly MarkKind[];
  /** The page shows the outline of the blank in place of the art: to be cut and tried on the bare blank. Needs a sheet. */
  readonly dummy?: boolean;
  /** Which colours the printer can make; the coated reference by default. */
  readonly condition?: PrintingCondition;
  /** The file is converted for this printer; tagged sRGB and left to the driver when left out. */
  readonly conversion?: PrinterConversion;
  /** Ids of the mends to be carried out before the art is placed; `preflight` and `mendArtwork` do. */
  readonly mends?: readonly string[];
  /** How `extend-edges` goes on beyond the rim; `reflect` by default. */
  readonly extend?: ExtendHow;
}

/** An artwork placed on its blank. `job` and `plan` are null and `rimPx` empty when nothing is visible. */
export interface PlacedArtwork {
  readonly blank: BlankInHand;
  readonly extents: Extents;
  /** Points that bound the visible pixels: corners of their hull, or of the rim's pixels where the edge has inward corners. */
  readonly rimPx: readonly PointPx[];
  readonly job: Job | null;
  /** Computed without touching a pixel. */
  readonly plan: PrintPlan | null;
}

/** A placed artwork and its picture; null when nothing is visible. */
export interface PicturedArtwork extends PlacedArtwork {
  readonly picture: PrintPicture | null;
}

/** A pictured artwork and what every check said of it, in the order of the list. */
export interface CheckedArtwork extends PicturedArtwork {
  readonly outcomes: readonly Outcome[];
}

const WHITE: Background = { r: 255, g: 255, b: 255, alpha: 1 };

/**
 * Finds where the art of an artwork lies, places it on the blank that the request names, and plans its print-ready file.
 * @throws BlankcheckError of kind `usage` when the request cannot be met on this blank.
 */
export function placeArtwork(artwork: Artwork, request: PrintRequest): PlacedArtwork {
  const blank = resolveBlank(request, familyOf(request.blank));
  const extents = findExtents(artwork.raster);
  const { contentBoxPx } = extents;
  if (contentBoxPx === null) return { blank, extents, rimPx: [], job: null, plan: null };
  const rimPx = hasConvexEdge(blank)
    ? extents.hullPx
    : listOutlinePoints(makeArtTest(artwork.raster, { from: 'visible', whiteIsNoArt: false }), contentBoxPx);
  const job = placeArt(request, blank, contentBoxPx, rimPx);
  const plan = planPrint(job, {
    rimPx,
    background: request.background ?? WHITE,
    ...(request.conversion ? { conversion: request.conversion } : {}),
    isForPrinter: isForPrinter(artwork, request),
    mends: artwork.mends ?? [],
    ...(artwork.ownColours ? { coloursFrom: artwork.ownColours.name } : {}),
  });
  return { blank, extents, rimPx, job, plan };
}

/**
 * Places an artwork and brings it to its print size: what is judged, and what is printed.
 * @throws BlankcheckError as placeArtwork, the signal's reason when it was aborted.
 */
export async function pictureArtwork(
  artwork: Artwork,
  request: PrintRequest,
  options: { readonly signal?: AbortSignal } = {},
): Promise<PicturedArtwork> {
  const placed = placeArtwork(artwork, request);
  return { ...placed, picture: await takePicture(artwork, placed, request, options.signal) };
}

/** True when the art's samples are those of the very printer that the file is for: they go through unconverted. */
export function isForPrinter({ ownColours }: Artwork, { conversion }: PrintRequest): boolean {
  return conversion !== undefined && ownColours?.sha256 === conversion.sha256;
}

/** Runs every check on a pictured artwork. Checks never throw. @throws BlankcheckError where the condition cannot be had. */
export async function judgePicture(
  artwork: Artwork,
  pictured: PicturedArtwork,
  request: PrintRequest,
): Promise<CheckedArtwork> {
  return { ...pictured, outcomes: await judgeChecks(artwork, pictured, request, CHECKS) };
}

/** What these checks say of a pictured artwork. @throws as judgePicture */
export async function judgeChecks(
  artwork: Artwork,
  pictured: PicturedArtwork,
  request: PrintRequest,
  checks: readonly CheckDefinition[],
): Promise<Outcome[]> {
  const condition = pictured.picture && (await conditionFor(request));
  const { conversion = null } = request;
  const page = findPage(pictured.job, pictured.extents, request);
  return runChecks({ artwork, ...pictured, condition, conversion, page }, checks);
}

/** The condition that is asked for, else the printer that the file is converted for, else the reference. */
export async function conditionFor({ condition, conversion }: PrintRequest): Promise<PrintingCondition> {
  return condition ?? (conversion ? conditionOf(conversion) : await loadCondition(DEFAULT_CONDITION));
}

/** An artwork placed on its blank, pictured and judged: `pictureArtwork` and `judgePicture` in one. @throws as they do. */
export async function checkArtwork(
  artwork: Artwork,
  request: PrintRequest,
  options: { readonly signal?: AbortSignal } = {},
): Promise<CheckedArtwork> {
  return judgePicture(artwork, await pictureArtwork(artwork, request, options), request);
}

/** Mends whose fault comes back with resampling are done once more on the picture itself. */
async function finishMends(artwork: Artwork, picture: Raster, request: PrintRequest): Promise<Raster> {
  const finishing = MENDS.filter(({ id, finish }) => finish && artwork.mends?.includes(id));
  if (finishing.length === 0) return picture;
  const source = artwork.ownColours?.profile ?? SRGB_PROFILE;
  const condition = await conditionFor(request);
  return finishing.reduce((raster, { finish }) => finish!(raster, { source, condition }), picture);
}

async function takePicture(
  artwork: Artwork,
  { job, plan }: PlacedArtwork,
  request: PrintRequest,
  signal?: AbortSignal,
): Promise<PrintPicture | null> {
  if (job === null || plan === null) return null;
  const scaled = await scaleArt(artwork.raster, plan, { resample, ...(signal ? { signal } : {}) });
  const raster = await finishMends(artwork, scaled, request);
  const pad = plan.steps.find((step) => step.step === 'pad')!;
  const middle = middleOf(job.blank.edge.box);
  const pixelMm = MM_PER_INCH / job.ppi;
  const originMm = {
    x: middle.x + (pad.x - pad.widthPx / 2) * pixelMm,
    y: middle.y + (pad.y - pad.heightPx / 2) * pixelMm,
  };
  return { raster, originMm, pixelMm };
}
