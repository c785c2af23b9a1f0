import { createHash } from 'node:crypto';
import { BlankcheckError } from '../blankcheck-error.ts';
import type { Artwork } from './artwork.ts';
import { planColour } from './colour-plan.ts';
import { convertToSrgb } from './convert-to-srgb.ts';
import { decodePicture, decodeThroughLibrary } from './decode-picture.ts';
import { type Limits, limitsWith } from './limits.ts';
import { type OpenPicture, openPicture } from './open-picture.ts';
import { readContainer } from './read-container.ts';
import { requireFormat } from './sniff.ts';
import { combineStatedPpi } from './stated-ppi.ts';
import { withinSeconds } from './within-seconds.ts';

export interface ReadOptions {
  /** Replaces single limits of the table. */
  readonly limits?: Partial<Limits>;
  readonly signal?: AbortSignal;
  /** Size at which a drawing is drawn; pictures are never scaled. */
  readonly drawAt?: DrawAt;
}

/** Size of the whole canvas of a drawing, as drawn. */
export interface DrawAt {
  readonly widthPx: number;
  readonly heightPx: number;
}

/**
 * The artwork in these bytes, fully decoded: a header proves nothing. The order is that of libvips' advice for
 * untrusted files: format by its first bytes, container to its last byte, header against the limits, then pixels.
 * @throws `empty-file`, `unknown-format`, `unsupported-format`, `damaged`, `too-many-bytes`, `too-many-pixels`,
 *   `too-slow`; the signal's reason when it was aborted
 */
export async function readArtwork(bytes: Uint8Array, options: ReadOptions = {}): Promise<Artwork> {
  const limits = limitsWith(options.limits);
  options.signal?.throwIfAborted();
  if (bytes.length > limits.maxBytes)
    throw new BlankcheckError(
      'too-many-bytes',
      `The file has ${Math.ceil(bytes.length / 1e6)} MB, the limit is ${Math.floor(limits.maxBytes / 1e6)} MB. Scale the artwork down, or raise maxBytes.`,
    );
  const format = requireFormat(bytes);
  if (format === 'svg') throw new Error('not yet');
  return readPicture(format, bytes, limits, options.signal);
}

async function readPicture(
  format: OpenPicture['format'],
  bytes: Uint8Array,
  limits: Limits,
  signal?: AbortSignal,
): Promise<Artwork> {
  const container = readContainer(format, bytes, limits);
  const picture = await withinSeconds(openPicture(format, bytes, limits), limits.maxSeconds, signal);
  signal?.throwIfAborted();
  const { profile, way } = planColour(container.colour, picture.model);
  const decoding = way === 'library' ? decodeThroughLibrary(picture, limits) : decodePicture(picture, limits);
  const waiting = withinSeconds(decoding, limits.maxSeconds, signal);
  // The decoder works in a thread of its own: hashing meanwhile costs no time.
  const sha256 = createHash('sha256').update(bytes).digest('hex');
  const raster = await waiting;
  signal?.throwIfAborted();
  return {
    format,
    sha256,
    raster: typeof way === 'string' ? raster : convertToSrgb(raster, way),
    statedPpi: combineStatedPpi(format, container.storedPpi, picture.exif, picture.orientation),
    orientation: picture.orientation,
    pages: container.pages,
    profile,
    printRecord: null,
    vector: null,
  };
}
