import { setImmediate } from 'node:timers/promises';
import {
  conditionFor,
  judgeChecks,
  type PrintRequest,
  pictureArtwork,
  placeArtwork,
} from './check-artwork.ts';
import type { Outcome } from './checks/finding.ts';
import { CHECKS } from './checks/index.ts';
import type { Artwork } from './formats/artwork.ts';
import { MM_PER_INCH } from './geometry/length.ts';
import { middleOf, type PointPx } from './geometry/rectangle.ts';
import { SRGB_PROFILE } from './icc/srgb-profile.ts';
import { frameOf, rectToMm } from './job/art-frame.ts';
import type { Job } from './job/job.ts';
import type { MendDefinition } from './mends/define-mend.ts';
import { MENDS } from './mends/index.ts';
import { type Change, measureChange } from './mends/measure-change.ts';
import { addAlpha } from './raster/add-alpha.ts';
import { embedRaster } from './raster/embed.ts';
import { findExtents } from './raster/find-extents.ts';
import type { Raster } from './raster/raster.ts';
import type { MendReport } from './reports/report.ts';

/** What one mend changed, and what the checks that it answers to had found before it. */
export interface Mended extends Change {
  readonly mend: string;
  readonly areaMm2: number;
  readonly before: readonly Outcome[];
  readonly inventedMm?: number;
}

export interface MendedArtwork {
  /** The very artwork where no mend was asked for; else it says which were, and holds the mended raster. */
  readonly artwork: Artwork;
  /** The same, but where the canvas grew: then it names the size that leaves the art as large as it was, where it was. */
  readonly request: PrintRequest;
  /** In the order in which they were carried out; mends that found nothing to do are left out. */
  readonly mends: readonly Mended[];
}

/**
 * Carries out the mends that the request names on the artwork's raster, before it is placed. The artwork that is given
 * is not changed. Each mend's area is that at the print size it leads to; the checks that it answers to are run once
 * before it, and only where it changed something.
 * @throws BlankcheckError as placeArtwork, the signal's reason when it was aborted.
 */
export async function mendArtwork(
  given: Artwork,
  asGiven: PrintRequest,
  options: { readonly signal?: AbortSignal } = {},
): Promise<MendedArtwork> {
  let request = asGiven;
  const asked = MENDS.filter(({ id }) => request.mends?.includes(id));
  if (asked.length === 0) return { artwork: given, request: asGiven, mends: [] };
  const condition = await conditionFor(request);
  const { conversion = null } = request;
  const source = given.ownColours?.profile ?? SRGB_PROFILE;
  let artwork: Artwork = { ...given, mends: asked.map(({ id }) => id) };
  const mends: Mended[] = [];
  for (const mend of asked) {
    await setImmediate();
    options.signal?.throwIfAborted();
    const { raster } = artwork;
    const placing = request;
    const asRead = artwork;
    const job = (placed = raster) => placeArtwork({ ...asRead, raster: placed }, placing).job;
    const context = { source, condition, conversion, job, extend: request.extend ?? 'reflect' };
    const { raster: mended, originPx, inventedMm } = mend.apply(raster, context);
    if (mended === raster) continue;
    const before = await judgeBefore(artwork, mend, request, options);
    if (originPx) request = keepPlace(request, job()!, mended, originPx);
    artwork = { ...artwork, raster: mended };
    const change = measureChange(likeIn(raster, mended, originPx), mended, source);
    mends.push({
      mend: mend.id,
      ...change,
      areaMm2: change.pixels * pixelAreaMm2(artwork, request),
      before,
      ...(inventedMm === undefined ? {} : { inventedMm }),
    });
  }
  return { artwork, request, mends };
}

/** The entries of the report: what was found before and is not found in `after` was mended. */
export function reportMends(mends: readonly Mended[], after: readonly Outcome[]): readonly MendReport[] {
  const left = new Set(codesOf(after));
  return mends.map(({ mend, areaMm2, pixels, largestDeltaE00, largestAlpha, inventedMm, before }) => {
    const answers = MENDS.find(({ id }) => id === mend)?.answers ?? [];
    const mended = codesOf(before).filter((code) => answers.includes(code) && !left.has(code));
    return {
      mend,
      areaMm2,
      pixels,
      largestDeltaE00,
      largestAlpha,
      mended,
      ...(inventedMm === undefined ? {} : { inventedMm }),
    };
  });
}

async function judgeBefore(
  artwork: Artwork,
  { answers }: MendDefinition,
  request: PrintRequest,
  options: { readonly signal?: AbortSignal },
): Promise<readonly Outcome[]> {
  const checks = CHECKS.filter(({ id }) => answers.some((answer) => answer.startsWith(`${id}/`)));
  if (checks.length === 0) return [];
  const asFound: Artwork = { ...artwork, mends: [] };
  return judgeChecks(asFound, await pictureArtwork(asFound, request, options), request, checks);
}

function codesOf(outcomes: readonly Outcome[]): readonly string[] {
  return outcomes.flatMap((outcome) =>
    outcome.status === 'found' ? outcome.findings.map(({ code }) => `${outcome.check}/${code}`) : [],
  );
}

/** The art as large as it was and where it was, although its visible part has grown. */
function keepPlace(request: PrintRequest, job: Job, grown: Raster, originPx: PointPx): PrintRequest {
  const box = findExtents(grown).contentBoxPx!;
  const was = { ...box, x: box.x - originPx.x, y: box.y - originPx.y };
  const placed = rectToMm(frameOf(job), was);
  const [middle, centre] = [middleOf(placed), middleOf(job.placementMm)];
  const before = job.offsetMm;
  return {
    ...request,
    widthMm: placed.width,
    heightMm: placed.height,
    offsetMm: { x: before.x + middle.x - centre.x, y: before.y + middle.y - centre.y },
  };
}

/** The old picture, made comparable with the new one: with alpha where that has some, and on its canvas where it grew. */
function likeIn(raster: Raster, mended: Raster, originPx?: PointPx): Raster {
  const before = mended.hasAlpha ? addAlpha(raster) : raster;
  return originPx ? moveOnto(before, mended, originPx) : before;
}

/** The old picture on the new canvas, so that the two can be compared. */
function moveOnto(raster: Raster, { widthPx, heightPx }: Raster, { x, y }: PointPx): Raster {
  return embedRaster(raster, { x: -x, y: -y, width: widthPx, height: heightPx });
}

/** Of one pixel of the artwork on the blank; 0 where nothing is left to be placed. */
function pixelAreaMm2(artwork: Artwork, request: PrintRequest): number {
  const { job } = placeArtwork(artwork, request);
  return job === null ? 0 : (MM_PER_INCH / job.effectivePpi.x) * (MM_PER_INCH / job.effectivePpi.y);
}
