import { constants, gunzipSync } from 'node:zlib';
import { BlankcheckError } from '../blankcheck-error.ts';

const HEAD_BYTES = 65_536; // declaration, comments and a document type may stand before the root element
/** Deflate packs at most 1032 to 1, so that this much gives 4 MB at most. */
const PACKED_HEAD_BYTES = 4096;
const GZIP = [0x1f, 0x8b, 8];
const isGzip = (bytes: Uint8Array) => GZIP.every((byte, index) => bytes[index] === byte);

/** True when the root element is `svg`, in plain or gzip-compressed text of any encoding that XML names. */
export function looksLikeSvg(bytes: Uint8Array): boolean {
  let head = bytes.subarray(0, HEAD_BYTES);
  if (isGzip(bytes)) {
    try {
      // The head of a stream has no end: what comes out so far is enough.
      head = gunzipSync(bytes.subarray(0, PACKED_HEAD_BYTES), { finishFlush: constants.Z_SYNC_FLUSH });
    } catch {
      return false;
    }
  }
  const text = decodeText(head.subarray(0, HEAD_BYTES));
  return text !== null && /^<(?:[\w.-]+:)?svg(?:[\s/>]|$)/.test(text.slice(prologLength(text)));
}

/**
 * The drawing as text, unpacked and decoded.
 * @throws `too-many-bytes` above `maxBytes` of text; `damaged` when it cannot be unpacked or decoded
 */
export function readSvgText(bytes: Uint8Array, maxBytes: number): string {
  const plain = isGzip(bytes) ? unpack(bytes, maxBytes) : bytes;
  if (plain.length > maxBytes) throw tooLong(maxBytes);
  const text = decodeText(plain);
  if (text === null)
    throw new BlankcheckError(
      'damaged',
      'The drawing names a text encoding that is not known. Save it as UTF-8.',
    );
  return text;
}

/** Length of what stands before the root element: declaration, comments, document type, white space. */
export function prologLength(text: string): number {
  const part = /\s+|<\?[\s\S]*?\?>|<!--[\s\S]*?-->|<!DOCTYPE[^[>]*(?:\[[\s\S]*?\]\s*)?>/iy;
  let length = 0;
  while (part.test(text)) length = part.lastIndex;
  return length;
}

function unpack(bytes: Uint8Array, maxBytes: number): Uint8Array {
  try {
    return gunzipSync(bytes, { maxOutputLength: maxBytes });
  } catch (cause) {
    if (cause instanceof RangeError) throw tooLong(maxBytes);
    throw new BlankcheckError(
      'damaged',
      'The compressed drawing is damaged or cut off. Export or download it again.',
      { cause },
    );
  }
}

function tooLong(maxBytes: number): BlankcheckError {
  return new BlankcheckError(
    'too-many-bytes',
    `The drawing has more than ${Math.round(maxBytes / 1e6)} MB of text. Simplify it, or export a PNG at the print size.`,
  );
}

/** By byte order mark, else by the XML declaration, else UTF-8 (XML 1.0, 4.3.3). Null for an unknown encoding. */
function decodeText(bytes: Uint8Array): string | null {
  const label = encodingOf(bytes);
  try {
    return new TextDecoder(label).decode(bytes);
  } catch {
    return null;
  }
}

function encodingOf(bytes: Uint8Array): string {
  const [first, second] = bytes;
  if (first === 0xff && second === 0xfe) return 'utf-16le';
  if (first === 0xfe && second === 0xff) return 'utf-16be';
  if (first === 0x3c && second === 0) return 'utf-16le';
  if (first === 0 && second === 0x3c) return 'utf-16be';
  const declaration = String.fromCharCode(...bytes.subarray(0, 200));
  return /^(?:\xef\xbb\xbf)?<\?xml[^>]*?encoding\s*=\s*["']([\w.-]+)["']/.exec(declaration)?.[1] ?? 'utf-8';
}
