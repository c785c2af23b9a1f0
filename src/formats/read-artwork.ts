import { createHash } from 'node:crypto';
import { BlankcheckError } from '../blankcheck-error.ts';
import type { IccProfile } from '../icc/profile.ts';
import type { Artwork } from './artwork.ts';
import type { DrawAt } from './draw-sized-svg.ts';
import { type Limits, limitsWith } from './limits.ts';
import { readDrawing } from './read-drawing.ts';
import { readPicture, readPictureFromFile } from './read-picture.ts';
import { requireFormat } from './sniff.ts';
import type { HashedStandIn } from './stand-in.ts';
import { withinSeconds } from './within-seconds.ts';

export type { DrawAt } from './draw-sized-svg.ts';

export interface ReadOptions {
  /** Replaces single limits of the table. */
  readonly limits?: Partial<Limits>;
  readonly signal?: AbortSignal;
  /** A file with the same bytes: a picture is decoded from there, and `bytes` is emptied before, so that it holds no memory. */
  readonly standIn?: HashedStandIn;
  /** Called once the decoder is at work in a thread of its own: what it does meanwhile costs no time. Must not throw. */
  readonly whileDecoding?: () => void;
  /** Size at which a drawing is drawn; pictures are never scaled. */
  readonly drawAt?: DrawAt;
  /** What the inks of CMYK art without a profile look like; asked for such art only, which cannot be read without it. */
  readonly untaggedCmyk?: () => Promise<IccProfile>;
}

/**
 * The artwork in these bytes, fully decoded: a header proves nothing. The order is that of libvips' advice for
 * untrusted files: format by its first bytes, container to its last byte, header against the limits, then pixels.
 * @throws `empty-file`, `unknown-format`, `unsupported-format`, `damaged`, `too-many-bytes`, `too-many-pixels`,
 *   `too-slow`, `cannot-read` where a stand-in changed; the signal's reason when it was aborted
 */
export async function readArtwork(bytes: Uint8Array, options: ReadOptions = {}): Promise<Artwork> {
  const limits = limitsWith(options.limits);
  options.signal?.throwIfAborted();
  if (bytes.length > limits.maxBytes)
    throw new BlankcheckError(
      'too-many-bytes',
      `The file has ${Math.ceil(bytes.length / 1e6)} MB, the limit is ${Math.floor(limits.maxBytes / 1e6)} MB. Scale the artwork down, or raise the limit maxBytes (--limit maxBytes=…).`,
    );
  const format = requireFormat(bytes);
  if (format === 'svg') return readVector(bytes, limits, options);
  const { standIn } = options;
  return standIn
    ? readPictureFromFile(format, bytes, standIn, { ...options, limits })
    : readPicture(format, bytes, { ...options, limits });
}

async function readVector(
  bytes: Uint8Array,
  limits: Limits,
  { signal, drawAt }: ReadOptions,
): Promise<Artwork> {
  const waiting = withinSeconds(readDrawing(bytes, limits, drawAt), limits.maxSeconds, signal);
  const sha256 = hash(bytes);
  const { raster, vector } = await waiting;
  signal?.throwIfAborted();
  return {
    format: 'svg',
    sha256,
    raster,
    ownColours: null,
    statedPpi: null,
    orientation: 1,
    pages: 1,
    profile: { kind: 'srgb', name: 'sRGB' }, // CSS colours are sRGB (SVG 2, 13.1)
    printRecord: null, // drawings are never written
    vector,
  };
}

const hash = (bytes: Uint8Array) => createHash('sha256').update(bytes).digest('hex');
