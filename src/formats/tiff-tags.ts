/**
 * Tags of a TIFF file or of an EXIF block, which is a small TIFF. Offsets inside count from the header.
 * @see TIFF Revision 6.0 (1992), section 2; Exif 2.3x (CIPA DC-008), 4.6.2; BigTIFF as libtiff defines it
 */
export interface TiffTags {
  readonly littleEndian: boolean;
  /** The directories in the order of their chain: pages of a TIFF; picture and thumbnail of an EXIF block. */
  readonly directories: readonly TiffDirectory[];
  /** False when a directory, an entry or a value reaches beyond the bytes, or the chain bites its tail. */
  readonly complete: boolean;
}

export type TiffDirectory = ReadonlyMap<number, TiffTag>;

export interface TiffTag {
  /** 1 byte, 2 ASCII, 3 short, 4 long, 5 rational … as in TIFF 6.0. */
  readonly type: number;
  /** Numbers, not bytes. */
  readonly count: number;
  readonly littleEndian: boolean;
  /** The values as stored: a view, never a copy. */
  readonly bytes: Uint8Array;
}

/** Bytes of one value by type: TIFF 6.0 types 1 to 12, IFD (13), and BigTIFF's 16 to 18. */
const VALUE_BYTES: Readonly<Record<number, number>> = {
  1: 1,
  2: 1,
  3: 2,
  4: 4,
  5: 8,
  6: 1,
  7: 1,
  8: 2,
  9: 4,
  10: 8,
  11: 4,
  12: 8,
  13: 4,
  16: 8,
  17: 8,
  18: 8,
};

/** Directories that overlap each other would cost far more than the file's size to read; no artwork has as many. */
const MOST_DIRECTORIES = 10_000;
const MOST_ENTRIES = 500_000;

/** How classic TIFF and BigTIFF lay out a directory; sizes in bytes. */
interface Layout {
  readonly countBytes: 2 | 8;
  readonly entryBytes: 12 | 20;
  readonly offsetBytes: 4 | 8;
}
const CLASSIC: Layout = { countBytes: 2, entryBytes: 12, offsetBytes: 4 };
const BIG: Layout = { countBytes: 8, entryBytes: 20, offsetBytes: 8 };

/**
 * Every directory of the chain, as far as it can be read; null when no TIFF header stands at `offset`.
 * Never throws: offsets and counts may lie. An entry of unknown type, or whose value is not there, is left out.
 */
export function readTiffTags(bytes: Uint8Array, offset = 0): TiffTags | null {
  const block = bytes.subarray(offset);
  const view = new DataView(block.buffer, block.byteOffset, block.byteLength);
  const header = readHeader(view);
  if (header === null) return null;
  const { littleEndian, layout } = header;
  const directories: TiffDirectory[] = [];
  const seen = new Set<number>();
  let complete = true;
  let entries = 0;
  let at = header.first;
  while (at !== 0) {
    if (seen.has(at) || seen.size >= MOST_DIRECTORIES || entries >= MOST_ENTRIES)
      return { littleEndian, directories, complete: false };
    seen.add(at);
    const directory = readDirectory(view, at, littleEndian, layout);
    if (directory === null) return { littleEndian, directories, complete: false };
    directories.push(directory.tags);
    entries += directory.entries;
    complete &&= directory.complete;
    at = directory.next;
  }
  return { littleEndian, directories, complete };
}

/** The tag's values as numbers: rationals divided (NaN for 0/0), text as character codes; [] for opaque bytes. */
export function readTagNumbers(tag: TiffTag | undefined): number[] {
  if (tag === undefined) return [];
  const view = new DataView(tag.bytes.buffer, tag.bytes.byteOffset, tag.bytes.byteLength);
  const width = VALUE_BYTES[tag.type] ?? 1;
  return Array.from({ length: tag.count }, (_, index) =>
    readNumber(view, index * width, tag.type, tag.littleEndian),
  );
}

function readNumber(view: DataView, at: number, type: number, little: boolean): number {
  switch (type) {
    case 3:
      return view.getUint16(at, little);
    case 4:
    case 13:
      return view.getUint32(at, little);
    case 5:
      return view.getUint32(at, little) / view.getUint32(at + 4, little);
    case 6:
      return view.getInt8(at);
    case 8:
      return view.getInt16(at, little);
    case 9:
      return view.getInt32(at, little);
    case 10:
      return view.getInt32(at, little) / view.getInt32(at + 4, little);
    case 11:
      return view.getFloat32(at, little);
    case 12:
      return view.getFloat64(at, little);
    case 16:
    case 18:
      return Number(view.getBigUint64(at, little));
    case 17:
      return Number(view.getBigInt64(at, little));
    default:
      return view.getUint8(at);
  }
}

function readHeader(view: DataView): { littleEndian: boolean; layout: Layout; first: number } | null {
  if (view.byteLength < 8) return null;
  const order = view.getUint16(0);
  if (order !== 0x4949 && order !== 0x4d4d) return null;
  const littleEndian = order === 0x4949;
  const magic = view.getUint16(2, littleEndian);
  if (magic === 42) return { littleEndian, layout: CLASSIC, first: view.getUint32(4, littleEndian) };
  if (magic !== 43 || view.byteLength < 16) return null;
  return { littleEndian, layout: BIG, first: Number(view.getBigUint64(8, littleEndian)) };
}

function readDirectory(view: DataView, at: number, littleEndian: boolean, layout: Layout) {
  const offsetAt = (place: number) =>
    layout.offsetBytes === 4
      ? view.getUint32(place, littleEndian)
      : Number(view.getBigUint64(place, littleEndian));
  if (at + layout.countBytes > view.byteLength) return null;
  const count = layout.countBytes === 2 ? view.getUint16(at, littleEndian) : offsetAt(at);
  const end = at + layout.countBytes + count * layout.entryBytes;
  if (end > view.byteLength) return null;
  const tags = new Map<number, TiffTag>();
  let complete = true;
  for (let entry = at + layout.countBytes; entry < end; entry += layout.entryBytes) {
    const type = view.getUint16(entry + 2, littleEndian);
    const values = layout.offsetBytes === 4 ? view.getUint32(entry + 4, littleEndian) : offsetAt(entry + 4);
    const size = values * (VALUE_BYTES[type] ?? 0);
    const field = entry + 4 + layout.offsetBytes;
    const start = size <= layout.offsetBytes ? field : offsetAt(field);
    if (size === 0) continue;
    if (start + size > view.byteLength) complete = false;
    else {
      const bytes = new Uint8Array(view.buffer, view.byteOffset + start, size);
      tags.set(view.getUint16(entry, littleEndian), { type, count: values, littleEndian, bytes });
    }
  }
  // Some writers of EXIF leave out the last link: then nothing follows.
  return {
    tags,
    complete,
    entries: count,
    next: end + layout.offsetBytes <= view.byteLength ? offsetAt(end) : 0,
  };
}
