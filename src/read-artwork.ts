import { DEFAULT_CONDITION, loadCondition } from './conditions/load-condition.ts';
import type { Artwork } from './formats/artwork.ts';
import { type ReadOptions as FormatOptions, readArtwork as readFormat } from './formats/read-artwork.ts';

/** As the formats take them; what CMYK without a profile looks like is known here. */
export type ReadOptions = Omit<FormatOptions, 'untaggedCmyk'>;

/**
 * The artwork in these bytes, fully decoded. CMYK art without a profile is read as the coated reference says, relative
 * colorimetric with black point compensation: what it was meant for is unknown.
 * @throws `empty-file`, `unknown-format`, `unsupported-format`, `damaged`, `too-many-bytes`, `too-many-pixels`,
 *   `too-slow`; the signal's reason when it was aborted
 */
export function readArtwork(bytes: Uint8Array, options: ReadOptions = {}): Promise<Artwork> {
  const untaggedCmyk = async () => (await loadCondition(DEFAULT_CONDITION)).profile;
  return readFormat(bytes, { ...options, untaggedCmyk });
}
