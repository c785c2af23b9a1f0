import { createHash } from 'node:crypto';
import type { PixelTransform } from '../icc/pixel-transform.ts';
import type { IccProfile } from '../icc/profile.ts';
import type { Raster } from '../raster/raster.ts';
import type { Artwork } from './artwork.ts';
import { planColour } from './colour-plan.ts';
import type { ContainerFacts } from './container-facts.ts';
import { convertToSrgb } from './convert-to-srgb.ts';
import { convertToWide } from './convert-to-wide.ts';
import { decodePicture } from './decode-picture.ts';
import type { Limits } from './limits.ts';
import { type OpenPicture, openPicture } from './open-picture.ts';
import { type PrintRecord, readPrintRecord } from './print-record.ts';
import { readContainer } from './read-container.ts';
import type { HashedStandIn } from './stand-in.ts';
import { combineStatedPpi } from './stated-ppi.ts';
import { toWideTransform } from './to-wide-transform.ts';
import { withinSeconds } from './within-seconds.ts';

export interface ReadPictureOptions {
  readonly limits: Limits;
  readonly signal?: AbortSignal | undefined;
  readonly whileDecoding?: (() => void) | undefined;
  readonly untaggedCmyk?: (() => Promise<IccProfile>) | undefined;
}

/** What is known of a picture once its bytes were read, and its pixels, which may be under way. */
interface PictureUnderWay {
  readonly picture: OpenPicture;
  readonly container: ContainerFacts;
  readonly sha256: string;
  readonly printRecord: PrintRecord | null;
  readonly decoding: Promise<Raster>;
}

/** A picture whose bytes stay in memory until it is decoded. @throws as `readArtwork` */
export async function readPicture(
  format: OpenPicture['format'],
  bytes: Uint8Array,
  options: ReadPictureOptions,
): Promise<Artwork> {
  const { limits, signal } = options;
  // The walk over a PNG sums up every byte of it, which may as well be done while the decoder, in a thread of its
  // own, is at work. The other containers are walked in no time, and say better than the decoder what is wrong.
  const walkLate = format === 'png';
  const walked = walkLate ? null : readContainer(format, bytes, limits);
  const picture = await withinSeconds(openPicture(format, bytes, limits), limits.maxSeconds, signal);
  signal?.throwIfAborted();
  const decoding = decodePicture(picture, limits);
  // Whoever waits for it is told.
  decoding.catch(() => undefined);
  const container = walked ?? readContainer(format, bytes, limits);
  return finish(
    {
      picture,
      container,
      sha256: createHash('sha256').update(bytes).digest('hex'),
      printRecord: readPrintRecord(bytes),
      decoding,
    },
    options,
  );
}

/**
 * A picture so large that its bytes are let go before its pixels come, which are decoded from the file that stands in for
 * them: `bytes` is empty afterwards. @throws as `readArtwork`, and `cannot-read` where the file changed meanwhile
 */
export async function readPictureFromFile(
  format: OpenPicture['format'],
  bytes: Uint8Array,
  { path, sha256, letGo, refuseChanged }: HashedStandIn,
  options: ReadPictureOptions,
): Promise<Artwork> {
  const { limits, signal } = options;
  const container = withOwnProfile(readContainer(format, bytes, limits));
  const printRecord = readPrintRecord(bytes);
  // What a changed file fails with says nothing of the art.
  const opening = openPicture(format, path, limits).finally(refuseChanged);
  const picture = await withinSeconds(opening, limits.maxSeconds, signal);
  await letGo(bytes);
  signal?.throwIfAborted();
  const decoding = decodePicture(picture, limits).finally(refuseChanged);
  return finish({ picture, container, sha256, printRecord, decoding }, options);
}

/** The profile outlives the bytes that it lies in. */
function withOwnProfile(facts: ContainerFacts): ContainerFacts {
  const { colour } = facts;
  return colour.kind === 'icc' ? { ...facts, colour: { ...colour, bytes: colour.bytes.slice() } } : facts;
}

async function finish(
  { picture, container, sha256, printRecord, decoding }: PictureUnderWay,
  { limits, signal, whileDecoding, untaggedCmyk }: ReadPictureOptions,
): Promise<Artwork> {
  const { profile, way, ownColours } = planColour(container.colour, picture.model);
  const waiting = withinSeconds(decoding, limits.maxSeconds, signal);
  whileDecoding?.();
  const transform = way === 'reference' ? await transformOfInks(untaggedCmyk) : way;
  const raster = await waiting;
  signal?.throwIfAborted();
  return {
    format: picture.format,
    sha256,
    raster: transform === 'keep' ? raster : (ownColours ? convertToWide : convertToSrgb)(raster, transform),
    ownColours,
    statedPpi: combineStatedPpi(picture.format, container.storedPpi, picture.exif, picture.orientation),
    orientation: picture.orientation,
    pages: container.pages,
    profile,
    printRecord,
    vector: null,
  };
}

async function transformOfInks(untaggedCmyk: ReadPictureOptions['untaggedCmyk']): Promise<PixelTransform> {
  if (!untaggedCmyk)
    throw new Error('Expected a printing condition for CMYK without a profile, received none.');
  return toWideTransform(await untaggedCmyk());
}
