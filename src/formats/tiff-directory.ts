/** One entry of a directory; the values' bytes are in the byte order of the file. */
export interface TiffEntry {
  readonly tag: number;
  /** As in TIFF 6.0: 1 byte, 2 ASCII, 3 short, 5 rational, 7 undefined … */
  readonly type: number;
  /** Numbers, not bytes. */
  readonly count: number;
  readonly bytes: Uint8Array;
}

const ENTRY_BYTES = 12;
const INLINE_BYTES = 4;

/**
 * A copy of a (classic) TIFF whose only directory holds exactly these entries; their values and the directory
 * follow the old bytes, and nothing that the old directory points to moves.
 * @see TIFF Revision 6.0 (1992), section 2 (entries ascend by tag; values of up to four bytes stand in the entry;
 *   values and directories begin on even bytes)
 */
export function replaceTiffDirectory(
  tiff: Uint8Array,
  littleEndian: boolean,
  entries: readonly TiffEntry[],
): Uint8Array {
  const sorted = entries.toSorted((a, b) => a.tag - b.tag);
  const outside = sorted.filter(({ bytes }) => bytes.length > INLINE_BYTES);
  let end = even(tiff.length);
  const places = new Map(
    outside.map((entry) => {
      const place = end;
      end += even(entry.bytes.length);
      return [entry, place] as const;
    }),
  );
  const written = new Uint8Array(end + 2 + sorted.length * ENTRY_BYTES + 4);
  const view = new DataView(written.buffer);
  written.set(tiff);
  view.setUint32(4, end, littleEndian);
  view.setUint16(end, sorted.length, littleEndian);
  for (const [index, entry] of sorted.entries()) {
    const at = end + 2 + index * ENTRY_BYTES;
    const place = places.get(entry);
    view.setUint16(at, entry.tag, littleEndian);
    view.setUint16(at + 2, entry.type, littleEndian);
    view.setUint32(at + 4, entry.count, littleEndian);
    if (place !== undefined) view.setUint32(at + 8, place, littleEndian);
    written.set(entry.bytes, place ?? at + 8);
  }
  return written;
}

function even(length: number): number {
  return length + (length & 1);
}
