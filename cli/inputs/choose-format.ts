import { posix } from 'node:path';
import {
  type Artwork,
  type ArtworkReport,
  BlankcheckError,
  type Limits,
  readArtwork,
  type StandIn,
  surveyRaster,
} from '../../src/index.ts';
import { findFileAtRest } from './file-at-rest.ts';
import type { PlannedArtwork } from './planned-artwork.ts';
import type { ArtworkReader } from './read-artworks.ts';

/** An artwork that was read, and the names of the formats of it that were passed over for it. */
export interface ReadFormat {
  readonly artwork: PlannedArtwork;
  readonly bytes: BytesOnce;
  /** The file that the bytes were read from, as it was before; null where it is none of its own. */
  readonly standIn: StandIn | null;
  readonly insteadOf: readonly string[];
  /** Those among them that were found to be unreadable. */
  readonly unreadableBeside: readonly string[];
}

/** Bytes that go to whoever takes them: a function that waits keeps all that it was given, and a file may be large. */
export interface BytesOnce {
  look<T>(at: (bytes: Uint8Array) => T): T;
  take(): Uint8Array;
}

function once(bytes: Uint8Array): BytesOnce {
  let held: Uint8Array | null = bytes;
  const have = () => {
    if (held === null) throw new Error('The bytes were taken before.');
    return held;
  };
  return {
    look: (at) => at(have()),
    take: () => {
      const taken = have();
      held = null;
      return taken;
    },
  };
}

interface Whole {
  readonly artwork: PlannedArtwork;
  readonly bytes: Uint8Array;
  readonly visiblePixels: number;
  readonly rank: number;
}

/** Of a drawing that may look otherwise here than where it was made: any whole picture is better. */
const LAST_RESORT = -1;

/**
 * Reads an artwork; where it stands for several formats, the best of them: a drawing without text and outside
 * references, else the one with the most visible pixels (alpha above 0 at its own depth), of equal ones the first in
 * their order. What is damaged, or print-ready already, loses to what is whole; where nothing is, the first is read.
 * All but the best are decoded only where their header lets them win; that one is decoded again when it is judged,
 * since whether it is whole must be known before the others are given up.
 * @throws BlankcheckError of kind `artwork`; whatever aborted the signal
 */
export async function readBestFormat(
  artwork: PlannedArtwork,
  reader: ArtworkReader,
  options: { readonly limits: Partial<Limits>; readonly signal: AbortSignal },
): Promise<ReadFormat> {
  const { formats = [artwork] } = artwork;
  if (formats.length === 1) {
    const { origin } = artwork;
    const standIn = origin.kind === 'file' ? await findFileAtRest(origin.file) : null;
    const bytes = once(await reader.read(artwork));
    return { artwork, bytes, standIn, insteadOf: [], unreadableBeside: [] };
  }
  let best: Whole | null = null;
  const unreadable: PlannedArtwork[] = [];
  for (const candidate of byPromise(formats)) {
    const rank = formats.indexOf(candidate);
    const most = mostPixels(candidate);
    if (best && (most < best.visiblePixels || (most === best.visiblePixels && rank > best.rank))) continue;
    const whole = await readWhole(candidate, rank, reader, options);
    if (whole === 'unreadable') unreadable.push(candidate);
    if (typeof whole === 'string') continue;
    const isBetter =
      best === null ||
      whole.visiblePixels > best.visiblePixels ||
      (whole.visiblePixels === best.visiblePixels && rank < best.rank);
    if (isBetter) best = whole;
    if (whole.visiblePixels === Infinity) break;
  }
  const chosen = best ?? { artwork: formats[0]!, bytes: await reader.read(formats[0]!) };
  return {
    artwork: chosen.artwork,
    bytes: once(chosen.bytes),
    // Formats of one art come out of archives.
    standIn: null,
    insteadOf: namesBeside(chosen.artwork, formats),
    unreadableBeside: namesBeside(
      chosen.artwork,
      formats.filter((format) => unreadable.includes(format)),
    ),
  };
}

/** The report, which says what the artwork was taken instead of, and which of that cannot be read. */
export function tellInsteadOf(
  report: ArtworkReport,
  insteadOf: readonly string[],
  unreadableBeside: readonly string[] = [],
): ArtworkReport {
  if (insteadOf.length === 0) return report;
  const beside = { insteadOf, ...(unreadableBeside.length > 0 && { unreadableBeside }) };
  return { ...report, artwork: { ...report.artwork, ...beside } };
}

/** The names of the other formats, in their order. */
export function namesBeside(
  artwork: PlannedArtwork,
  formats: readonly PlannedArtwork[] = [],
): readonly string[] {
  return formats.filter(({ path }) => path !== artwork.path).map(({ path }) => posix.basename(path));
}

/** Drawings first, then the larger before the smaller, so that few are decoded. */
function byPromise(formats: readonly PlannedArtwork[]): readonly PlannedArtwork[] {
  const promise = (one: PlannedArtwork) => (/^svgz?$/i.test(one.extension) ? Infinity : mostPixels(one));
  // Infinity less itself is no number.
  return [...formats].sort((a, b) => (promise(a) === promise(b) ? 0 : promise(b) > promise(a) ? 1 : -1));
}

/** By its header, which may lie: then it is damaged. */
function mostPixels({ entry }: PlannedArtwork): number {
  return entry?.size ? entry.size.width * entry.size.height : Infinity;
}

/** What is whole; else why it does not count. */
async function readWhole(
  artwork: PlannedArtwork,
  rank: number,
  reader: ArtworkReader,
  options: { readonly limits: Partial<Limits>; readonly signal: AbortSignal },
): Promise<Whole | 'unreadable' | 'print-ready'> {
  try {
    const bytes = await reader.read(artwork);
    const read = await readArtwork(bytes, options);
    return read.printRecord ? 'print-ready' : { artwork, bytes, visiblePixels: worthOf(read), rank };
  } catch (error) {
    if (error instanceof BlankcheckError && error.kind === 'artwork') return 'unreadable';
    throw error;
  }
}

function worthOf({ vector, raster }: Artwork): number {
  if (vector) return vector.textElements + vector.outsideReferences.length === 0 ? Infinity : LAST_RESORT;
  return raster.hasAlpha ? surveyRaster(raster).visiblePixels : raster.widthPx * raster.heightPx;
}
