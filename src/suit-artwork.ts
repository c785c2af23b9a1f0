import { BlankcheckError } from './blankcheck-error.ts';
import { familyOf, listBlanks } from './catalogue/catalogue.ts';
import type { BlankRecord } from './catalogue/records.ts';
import { coverBleedsAllRound } from './checks/edge-remedy.ts';
import type { Artwork } from './formats/artwork.ts';
import type { RectPx } from './geometry/rectangle.ts';
import type { Job } from './job/job.ts';
import { hasConvexEdge } from './job/lines.ts';
import { placeArt } from './job/place-art.ts';
import { resolveBlank } from './job/resolve-blank.ts';
import { type BlankSuit, compareSuits, suitJob } from './job/suit-job.ts';
import { makeArtTest } from './raster/art-test.ts';
import { findExtents } from './raster/find-extents.ts';
import { listOutlinePoints } from './raster/outline-points.ts';
import type { Raster } from './raster/raster.ts';
import type { Extents } from './raster/survey.ts';

export interface Suits {
  /** The blanks that the art can be placed on, the most fitting first. */
  readonly blanks: readonly BlankSuit[];
  /** Ids of those that nothing can be placed on: their safe line leaves no room. */
  readonly leftOut: readonly string[];
}

/**
 * For which blanks an artwork is fit: on each, the size under `inside`, the ppi there, the largest sizes at the family's
 * good and acceptable resolution, how well the proportions match, and whether it can bleed off the edge all round. A
 * drawing is as fine as the print. Both lists are empty where nothing is visible.
 */
export function suitArtwork(artwork: Artwork, blanks: readonly BlankRecord[] = listBlanks()): Suits {
  const { raster } = artwork;
  const extents = findExtents(raster);
  const suits: BlankSuit[] = [];
  const leftOut: string[] = [];
  for (const blank of extents.contentBoxPx === null ? [] : blanks) {
    const job = placeInside(raster, extents.contentBoxPx!, extents, blank);
    if (job === null) {
      leftOut.push(blank.id);
      continue;
    }
    const coversEdge = () => coverBleedsAllRound(job, raster);
    suits.push(suitJob(job, { coversEdge, isDrawing: artwork.vector !== null }));
  }
  return { blanks: suits.sort(compareSuits), leftOut };
}

/** null for a blank that nothing can be placed on. */
function placeInside(raster: Raster, boxPx: RectPx, { hullPx }: Extents, blank: BlankRecord): Job | null {
  try {
    const inHand = resolveBlank({ blank }, familyOf(blank));
    const rimPx = hasConvexEdge(inHand)
      ? hullPx
      : listOutlinePoints(makeArtTest(raster, { from: 'visible', whiteIsNoArt: false }), boxPx);
    return placeArt({ blank, fit: 'inside' }, inHand, boxPx, rimPx);
  } catch (error) {
    if (error instanceof BlankcheckError && error.kind === 'usage') return null;
    throw error;
  }
}
