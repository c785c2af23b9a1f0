import { type ContainerFacts, damagedFile } from './container-facts.ts';

/**
 * Profile and frame count of a WebP; the format has no density of its own.
 * @throws `damaged` when the file is shorter than its RIFF header says, a chunk is cut off, or no picture is in it
 * @see RFC 9649, 2.3 to 2.7 (RIFF container)
 */
export function readWebpFacts(bytes: Uint8Array): ContainerFacts {
  const chunks = readRiffChunks(bytes);
  const frames = chunks.filter(({ type }) => type === 'ANMF').length;
  if (frames === 0 && !chunks.some(({ type }) => type === 'VP8 ' || type === 'VP8L'))
    throw damagedFile('webp', 'it holds no picture data');
  const profile = chunks.find(({ type }) => type === 'ICCP');
  return {
    pages: Math.max(1, frames),
    storedPpi: null,
    colour: profile ? { kind: 'icc', bytes: profile.data } : { kind: 'none' },
  };
}

/** Of animations, the longest have some thousands; each costs an object. */
const MOST_CHUNKS = 100_000;

interface RiffChunk {
  readonly type: string;
  readonly data: Uint8Array;
}

function readRiffChunks(bytes: Uint8Array): RiffChunk[] {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  if (bytes.length < 20) throw damagedFile('webp', 'it is cut off');
  const end = 8 + view.getUint32(4, true);
  if (end > bytes.length) throw damagedFile('webp', `it has ${bytes.length} of ${end} bytes`);
  const chunks: RiffChunk[] = [];
  let at = 12;
  while (at + 8 <= end) {
    const size = view.getUint32(at + 4, true);
    const type = String.fromCharCode(...bytes.subarray(at, at + 4));
    if (at + 8 + size > end) throw damagedFile('webp', `the chunk ${type.trim()} at byte ${at} is cut off`);
    if (chunks.length >= MOST_CHUNKS) throw damagedFile('webp', `it has more than ${MOST_CHUNKS} chunks`);
    chunks.push({ type, data: bytes.subarray(at + 8, at + 8 + size) });
    at += 8 + size + (size & 1);
  }
  return chunks;
}
