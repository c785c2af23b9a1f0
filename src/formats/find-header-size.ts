import { sniffFormat } from './sniff.ts';

/** What a file's header says of its picture, as stored. */
export interface HeaderSize {
  readonly width: number;
  readonly height: number;
  readonly bytesPerSample: 1 | 2 | 4;
}

/**
 * The size that the first bytes of a file state, to plan memory by and for nothing else: it is neither turned nor
 * checked, and may lie. null for a drawing, for a header that lies further in, and for anything that is no picture.
 * Never throws.
 * @see ISO/IEC 15948 11.2.2 (PNG), ITU-T T.81 B.2.2 (JPEG), GIF89a 18, RFC 9649 2.5-2.7 (WebP), TIFF 6.0 section 2,
 *   ISO/IEC 23008-12 6.5.3 (AVIF)
 */
export function findHeaderSize(head: Uint8Array): HeaderSize | null {
  const format = sniffFormat(head);
  if (format === null || format === 'svg') return null;
  const view = new DataView(head.buffer, head.byteOffset, head.byteLength);
  try {
    const size = READERS[format](view);
    return size && size.width > 0 && size.height > 0 ? size : null;
  } catch (error) {
    // Read beyond the head: the header is longer than that, or cut off.
    if (error instanceof RangeError) return null;
    throw error;
  }
}

type ReadSize = (view: DataView) => HeaderSize | null;

const READERS = {
  png: (view) => ({
    width: view.getUint32(16),
    height: view.getUint32(20),
    bytesPerSample: view.getUint8(24) === 16 ? 2 : 1,
  }),
  gif: (view) => ({ width: view.getUint16(6, true), height: view.getUint16(8, true), bytesPerSample: 1 }),
  jpeg: readJpeg,
  webp: readWebp,
  tiff: readTiff,
  avif: readAvif,
} as const satisfies Record<string, ReadSize>;

function readJpeg(view: DataView): HeaderSize | null {
  for (let at = 2; ; at += 2 + view.getUint16(at + 2)) {
    while (view.getUint8(at) === 0xff && view.getUint8(at + 1) === 0xff) at += 1;
    const marker = view.getUint16(at);
    if (marker < 0xffc0 || marker === 0xffda) return null;
    // SOF0 to SOF15; between them lie DHT, JPG and DAC.
    if (marker <= 0xffcf && ![0xffc4, 0xffc8, 0xffcc].includes(marker))
      return { width: view.getUint16(at + 7), height: view.getUint16(at + 5), bytesPerSample: 1 };
  }
}

function readWebp(view: DataView): HeaderSize | null {
  const kind = textAt(view, 12);
  if (kind === 'VP8X')
    return {
      width: 1 + (view.getUint32(24, true) & 0xffffff),
      height: 1 + (view.getUint32(26, true) >>> 8),
      bytesPerSample: 1,
    };
  if (kind === 'VP8L') {
    const bits = view.getUint32(21, true);
    return { width: 1 + (bits & 0x3fff), height: 1 + ((bits >>> 14) & 0x3fff), bytesPerSample: 1 };
  }
  if (kind !== 'VP8 ') return null;
  return {
    width: view.getUint16(26, true) & 0x3fff,
    height: view.getUint16(28, true) & 0x3fff,
    bytesPerSample: 1,
  };
}

/** The first directory of a classic TIFF, where it lies in the head. */
function readTiff(view: DataView): HeaderSize | null {
  const little = view.getUint16(0) === 0x4949;
  if (view.getUint16(2, little) !== 42) return null;
  const at = view.getUint32(4, little);
  const tags = new Map<number, number>();
  for (let index = 0; index < view.getUint16(at, little); index += 1) {
    const entry = at + 2 + 12 * index;
    const isShort = view.getUint16(entry + 2, little) === 3;
    const value = isShort ? view.getUint16(entry + 8, little) : view.getUint32(entry + 8, little);
    const many = isShort && view.getUint32(entry + 4, little) > 2;
    tags.set(
      view.getUint16(entry, little),
      many ? view.getUint16(view.getUint32(entry + 8, little), little) : value,
    );
  }
  const bits = tags.get(258) ?? 1;
  return {
    width: tags.get(256) ?? 0,
    height: tags.get(257) ?? 0,
    bytesPerSample: bits > 16 ? 4 : bits > 8 ? 2 : 1,
  };
}

/** The largest `ispe` of the file: tiles and thumbnails have one too. */
function readAvif(view: DataView): HeaderSize | null {
  let largest: HeaderSize | null = null;
  for (let at = 0; at + 16 <= view.byteLength; at += 1) {
    if (view.getUint32(at) !== 0x69737065) continue;
    const [width, height] = [view.getUint32(at + 8), view.getUint32(at + 12)];
    // Decoded to 8 bits or to 16: the depth stands elsewhere, and more memory is the careful guess.
    if (width * height > (largest ? largest.width * largest.height : 0))
      largest = { width, height, bytesPerSample: 2 };
  }
  return largest;
}

function textAt(view: DataView, at: number): string {
  return String.fromCharCode(...[0, 1, 2, 3].map((offset) => view.getUint8(at + offset)));
}
