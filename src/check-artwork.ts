import { familyOf } from './catalogue/catalogue.ts';
import type { Outcome } from './checks/finding.ts';
import { CHECKS } from './checks/index.ts';
import { runChecks } from './checks/run.ts';
import type { Artwork } from './formats/artwork.ts';
import type { PointPx } from './geometry/rectangle.ts';
import type { BlankInHand, Job } from './job/job.ts';
import type { JobRequest } from './job/job-request.ts';
import { hasConvexEdge } from './job/lines.ts';
import { placeArt } from './job/place-art.ts';
import { resolveBlank } from './job/resolve-blank.ts';
import { makeArtTest } from './raster/art-test.ts';
import { listOutlinePoints } from './raster/outline-points.ts';
import type { Survey } from './raster/survey.ts';
import { surveyRaster } from './raster/survey-raster.ts';

/** An artwork placed on its blank. `job` is null and `rimPx` empty when nothing is visible. */
export interface PlacedArtwork {
  readonly blank: BlankInHand;
  readonly survey: Survey;
  /** Points that bound the visible pixels: corners of their hull, or of the rim's pixels where the edge has inward corners. */
  readonly rimPx: readonly PointPx[];
  readonly job: Job | null;
}

/** A placed artwork and what every check said of it, in the order of the list. */
export interface CheckedArtwork extends PlacedArtwork {
  readonly outcomes: readonly Outcome[];
}

/**
 * Surveys an artwork once and places it on the blank that the request names.
 * @throws BlankcheckError of kind `usage` when the request cannot be met on this blank.
 */
export function placeArtwork(artwork: Artwork, request: JobRequest): PlacedArtwork {
  const blank = resolveBlank(request, familyOf(request.blank));
  const survey = surveyRaster(artwork.raster);
  const { contentBoxPx } = survey;
  if (contentBoxPx === null) return { blank, survey, rimPx: [], job: null };
  const rimPx = hasConvexEdge(blank)
    ? survey.hullPx
    : listOutlinePoints(makeArtTest(artwork.raster, { from: 'visible', whiteIsNoArt: false }), contentBoxPx);
  return { blank, survey, rimPx, job: placeArt(request, blank, contentBoxPx, rimPx) };
}

/** Places an artwork and runs every check on it. @throws BlankcheckError as placeArtwork; checks never throw. */
export function checkArtwork(artwork: Artwork, request: JobRequest): CheckedArtwork {
  const placed = placeArtwork(artwork, request);
  return { ...placed, outcomes: runChecks({ artwork, ...placed }, CHECKS) };
}
