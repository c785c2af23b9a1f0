import { judgeChecks, type PrintRequest, pictureArtwork, placeArtwork } from '../../src/check-artwork.ts';
import type { CheckDefinition } from '../../src/checks/define-check.ts';
import { readEdge } from '../../src/checks/edge-profile.ts';
import type { Outcome } from '../../src/checks/finding.ts';
import type { Artwork } from '../../src/formats/artwork.ts';

/** Checks that say something only of art that bleeds, which nearly none of these pictures does of itself. */
export const OF_COVERING: readonly string[] = ['edge-detail'];

/** What they say of a picture that is made to cover the blank; nothing where it has gaps at the edge then. */
export async function judgeCovering(
  artwork: Artwork,
  request: PrintRequest,
  checks: readonly CheckDefinition[],
): Promise<Outcome[]> {
  const covering: PrintRequest = { ...request, fit: 'cover' };
  const { job } = placeArtwork(artwork, covering);
  // Most end here, before anything is scaled.
  if (job === null || readEdge(job, artwork.raster).some(({ reachMm }) => reachMm === null)) return [];
  const own = checks.filter(({ id }) => OF_COVERING.includes(id));
  return judgeChecks(artwork, await pictureArtwork(artwork, covering), covering, own);
}
