import { crc32 } from 'node:zlib';
import { BlankcheckError } from '../blankcheck-error.ts';

/** The eight bytes every PNG begins with (ISO/IEC 15948, 5.2). */
export const PNG_SIGNATURE: Uint8Array = Uint8Array.of(0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a);

/** One chunk of a PNG. `data` is a view into the bytes that were read, never a copy. */
export interface PngChunk {
  readonly type: string;
  readonly data: Uint8Array;
  /** Where the chunk's length field stands in the file. */
  readonly offset: number;
}

/** Pictures of a gigabyte in chunks of the usual sizes have fewer; each costs an object. */
const MOST_CHUNKS = 500_000;
const AROUND_DATA = 12; // length, type and CRC, four bytes each (5.3)

/**
 * All chunks of a PNG from IHDR to IEND, in their order; what follows IEND is not read.
 * An ancillary chunk whose CRC is wrong is left out, as a decoder may do (13.2); a critical one is damage.
 * @throws `damaged` when the signature, a critical chunk's CRC, IHDR first, any IDAT or IEND is missing
 * @see ISO/IEC 15948:2004, 5.3 (chunk layout), 5.4 (upper case first letter: critical), 5.6 (order)
 */
export function readPngChunks(bytes: Uint8Array): PngChunk[] {
  if (!PNG_SIGNATURE.every((byte, index) => bytes[index] === byte))
    throw damaged('it does not begin with the PNG signature');
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const chunks: PngChunk[] = [];
  let offset = PNG_SIGNATURE.length;
  while (offset + AROUND_DATA <= bytes.length) {
    const end = offset + AROUND_DATA + view.getUint32(offset);
    const type = String.fromCharCode(...bytes.subarray(offset + 4, offset + 8));
    if (!/^[A-Za-z]{4}$/.test(type)) throw damaged(`byte ${offset} begins no chunk`);
    if (chunks.length >= MOST_CHUNKS) throw damaged(`it has more than ${MOST_CHUNKS} chunks`);
    if (end > bytes.length) throw damaged(`the chunk ${type} at byte ${offset} is cut off`);
    const whole = crc32(bytes.subarray(offset + 4, end - 4)) === view.getUint32(end - 4);
    if (whole) chunks.push({ type, data: bytes.subarray(offset + 8, end - 4), offset });
    else if (/^[A-Z]/.test(type)) throw damaged(`the checksum of chunk ${type} at byte ${offset} is wrong`);
    if (chunks[0]?.type !== 'IHDR') throw damaged('it does not begin with an IHDR chunk');
    if (type === 'IEND') {
      if (!chunks.some((chunk) => chunk.type === 'IDAT')) throw damaged('it holds no picture data');
      return chunks;
    }
    offset = end;
  }
  throw damaged('it stops before its IEND chunk');
}

/** The bytes of one chunk: length, type, data, CRC-32. `type` is four ASCII letters. */
export function writePngChunk(type: string, data: Uint8Array): Uint8Array {
  const chunk = new Uint8Array(data.length + AROUND_DATA);
  const view = new DataView(chunk.buffer);
  view.setUint32(0, data.length);
  for (let index = 0; index < 4; index++) chunk[4 + index] = type.charCodeAt(index);
  chunk.set(data, 8);
  view.setUint32(data.length + 8, crc32(chunk.subarray(4, data.length + 8)));
  return chunk;
}

function damaged(what: string): BlankcheckError {
  return new BlankcheckError('damaged', `The PNG is damaged: ${what}. Export or download it again.`);
}
