import { stat } from 'node:fs/promises';
import { findHeaderSize, type HeaderSize, STAND_IN_BYTES } from '../../src/index.ts';
import type { PlannedArtwork } from '../inputs/planned-artwork.ts';
import { readHead } from '../inputs/read-bounded.ts';
import { IDLE_BYTES } from './pool-size.ts';

/** Red, green, blue, alpha. */
const CHANNELS = 4;
/** Peak above idle for each byte of the decoded picture. `npm run bench` holds preparing to 2.2; the rest is for mends and proofs. */
const PEAK_PER_DECODED_BYTE = 2.6;
/** Where no header tells: bytes in memory for each byte of the file, from memory for photographs at high quality. */
const PEAK_PER_FILE_BYTE = 30;

/** What one file weighs; zero bytes where it cannot be asked, and for a pipe. */
export async function weighFile(file: string): Promise<number> {
  return stat(file).then(
    (stats) => (stats.isFile() ? stats.size : 0),
    () => 0,
  );
}

/**
 * Bytes of memory that judging the artwork will need at its peak, its process included: from the width, height and depth
 * of its header, else from the size of its file. `fileBytes` is that of the file, or of the archive that holds it.
 */
export async function findMemoryNeed(artwork: PlannedArtwork, fileBytes: number): Promise<number> {
  const { origin, formats = [artwork] } = artwork;
  if (origin.kind === 'entry') {
    const needs = formats.map(({ entry }) => (entry ? needOf(entry.bytes, entry.size) : 0));
    return IDLE_BYTES + fileBytes + Math.max(...needs);
  }
  // Opening a pipe that nobody writes to waits for ever.
  if (origin.kind !== 'file' || fileBytes === 0) return IDLE_BYTES;
  const size = findHeaderSize(await readHead(origin.file));
  // A large one is let go before its pixels come.
  const isLetGo = size !== null && fileBytes >= STAND_IN_BYTES;
  return IDLE_BYTES + (isLetGo ? Math.max(fileBytes, needOf(0, size)) : needOf(fileBytes, size));
}

function needOf(bytes: number, size: HeaderSize | null): number {
  if (size === null) return bytes * PEAK_PER_FILE_BYTE;
  return bytes + size.width * size.height * CHANNELS * size.bytesPerSample * PEAK_PER_DECODED_BYTE;
}
