import { createHash } from 'node:crypto';
import { BlankcheckError } from '../blankcheck-error.ts';
import type { PixelTransform } from '../icc/pixel-transform.ts';
import type { IccProfile } from '../icc/profile.ts';
import type { Artwork } from './artwork.ts';
import { planColour } from './colour-plan.ts';
import { convertToSrgb } from './convert-to-srgb.ts';
import { convertToWide } from './convert-to-wide.ts';
import { decodePicture } from './decode-picture.ts';
import type { DrawAt } from './draw-sized-svg.ts';
import { type Limits, limitsWith } from './limits.ts';
import { type OpenPicture, openPicture } from './open-picture.ts';
import { readPrintRecord } from './print-record.ts';
import { readContainer } from './read-container.ts';
import { readDrawing } from './read-drawing.ts';
import { requireFormat } from './sniff.ts';
import { combineStatedPpi } from './stated-ppi.ts';
import { toWideTransform } from './to-wide-transform.ts';
import { withinSeconds } from './within-seconds.ts';

export type { DrawAt } from './draw-sized-svg.ts';

export interface ReadOptions {
  /** Replaces single limits of the table. */
  readonly limits?: Partial<Limits>;
  readonly signal?: AbortSignal;
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
 *   `too-slow`; the signal's reason when it was aborted
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
  return format === 'svg' ? readVector(bytes, limits, options) : readPicture(format, bytes, limits, options);
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

async function readPicture(
  format: OpenPicture['format'],
  bytes: Uint8Array,
  limits: Limits,
  { signal, whileDecoding, untaggedCmyk }: ReadOptions,
): Promise<Artwork> {
  // The walk over a PNG sums up every byte of it, which may as well be done while the decoder, in a thread of its
  // own, is at work. The other containers are walked in no time, and say better than the decoder what is wrong.
  const walkLate = format === 'png';
  const walked = walkLate ? null : readContainer(format, bytes, limits);
  const picture = await withinSeconds(openPicture(format, bytes, limits), limits.maxSeconds, signal);
  signal?.throwIfAborted();
  const early = walkLate ? decodePicture(picture, limits) : null;
  early?.catch(() => undefined);
  const container = walked ?? readContainer(format, bytes, limits);
  const { profile, way, ownColours } = planColour(container.colour, picture.model);
  const waiting = withinSeconds(early ?? decodePicture(picture, limits), limits.maxSeconds, signal);
  const sha256 = hash(bytes);
  const printRecord = readPrintRecord(bytes);
  whileDecoding?.();
  const transform = way === 'reference' ? await transformOfInks(untaggedCmyk) : way;
  const raster = await waiting;
  signal?.throwIfAborted();
  return {
    format,
    sha256,
    raster: transform === 'keep' ? raster : (ownColours ? convertToWide : convertToSrgb)(raster, transform),
    ownColours,
    statedPpi: combineStatedPpi(format, container.storedPpi, picture.exif, picture.orientation),
    orientation: picture.orientation,
    pages: container.pages,
    profile,
    printRecord,
    vector: null,
  };
}

async function transformOfInks(untaggedCmyk: ReadOptions['untaggedCmyk']): Promise<PixelTransform> {
  if (!untaggedCmyk)
    throw new Error('Expected a printing condition for CMYK without a profile, received none.');
  return toWideTransform(await untaggedCmyk());
}

const hash = (bytes: Uint8Array) => createHash('sha256').update(bytes).digest('hex');
