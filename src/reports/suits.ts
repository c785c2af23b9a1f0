import type { ArtworkFormat } from '../formats/artwork.ts';
import type { BlankSuit } from '../job/suit-job.ts';

/** One artwork and the blanks that it suits; what a run over several of them tells. */
export interface SuitedArtwork {
  readonly path: string;
  readonly sha256: string | null;
  readonly format: ArtworkFormat | null;
  /** null when the artwork could be read; then `blanks` may still be empty. */
  readonly error: { readonly code: string; readonly message: string } | null;
  readonly blanks: readonly BlankSuit[];
  /** Ids of blanks that no art is placed on yet. */
  readonly leftOut: readonly string[];
}
