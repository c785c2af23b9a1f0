import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type TiffEntry, writeTiff } from '../../fixtures/byte-writers/write-tiff.ts';
import { readTagNumbers, readTiffTags } from '../../src/formats/tiff-tags.ts';

const ENTRIES: readonly TiffEntry[] = [
  { tag: 256, type: 3, values: [640] },
  { tag: 258, type: 3, values: [8, 8, 8] },
  { tag: 282, type: 5, values: [3001, 10] },
  { tag: 305, type: 2, values: [...'garden\0'].map((letter) => letter.charCodeAt(0)) },
  { tag: 330, type: 4, values: [70_000, 80_000] },
];

const valuesOf = (bytes: Uint8Array, offset?: number) =>
  readTiffTags(bytes, offset)!.directories.map((directory) =>
    Object.fromEntries([...directory].map(([tag, value]) => [tag, readTagNumbers(value)])),
  );
const EXPECTED = {
  256: [640],
  258: [8, 8, 8],
  282: [300.1],
  305: [103, 97, 114, 100, 101, 110, 0],
  330: [70_000, 80_000],
};

describe('TIFF tags', () => {
  it.each([true, false])('reads every type in both byte orders (little endian: %s)', (littleEndian) => {
    const bytes = writeTiff([{ entries: ENTRIES }], littleEndian);
    expect(valuesOf(bytes)).toEqual([EXPECTED]);
    expect(readTiffTags(bytes)).toMatchObject({ littleEndian, complete: true });
  });

  it('counts offsets from the header, wherever it stands', () => {
    const block = writeTiff([{ entries: ENTRIES }]);
    expect(valuesOf(new Uint8Array(Buffer.concat([Buffer.from('Exif\0\0'), block])), 6)).toEqual([EXPECTED]);
  });

  it('follows the chain of directories', () => {
    const pages = [1, 2, 3].map((page) => ({ entries: [{ tag: 256, type: 3 as const, values: [page] }] }));
    expect(valuesOf(writeTiff(pages))).toEqual([{ 256: [1] }, { 256: [2] }, { 256: [3] }]);
  });

  it('reads BigTIFF', () => {
    // Header (16 bytes), one directory at 16: a short and a 64-bit number, both in place.
    const bytes = new Uint8Array(16 + 8 + 40 + 8);
    const view = new DataView(bytes.buffer);
    bytes.set([0x49, 0x49, 43, 0, 8, 0, 0, 0]);
    view.setBigUint64(8, 16n, true);
    view.setBigUint64(16, 2n, true);
    view.setUint16(24, 256, true);
    view.setUint16(26, 3, true);
    view.setBigUint64(28, 1n, true);
    view.setUint16(36, 640, true);
    view.setUint16(44, 273, true);
    view.setUint16(46, 16, true);
    view.setBigUint64(48, 1n, true);
    view.setBigUint64(56, 5_000_000_000n, true);
    expect(valuesOf(bytes)).toEqual([{ 256: [640], 273: [5_000_000_000] }]);
  });

  it('gives null where no TIFF header stands', () => {
    expect(readTiffTags(new Uint8Array(0))).toBe(null);
    expect(readTiffTags(Uint8Array.of(0x49, 0x49, 42, 0))).toBe(null);
    expect(readTiffTags(Buffer.from('PNG, not TIFF'))).toBe(null);
    expect(readTiffTags(writeTiff([{ entries: ENTRIES }]), 10_000)).toBe(null);
  });

  it('leaves out a value that is not there, and says so', () => {
    const bytes = writeTiff([{ entries: ENTRIES }]);
    const cut = bytes.subarray(0, bytes.length - 4); // the last value lies at the end
    expect(readTiffTags(cut)!.complete).toBe(false);
    expect(valuesOf(cut)).toEqual([{ ...EXPECTED, 330: undefined }]);
  });

  it('ends a chain that bites its tail', () => {
    const bytes = writeTiff([{ entries: [{ tag: 256, type: 3, values: [1] }] }]);
    new DataView(bytes.buffer, bytes.byteOffset).setUint32(8 + 2 + 12, 8, true);
    const tags = readTiffTags(bytes)!;
    expect(tags.directories).toHaveLength(1);
    expect(tags.complete).toBe(false);
  });

  it('takes a rational over 0 for no finite number', () => {
    const bytes = writeTiff([{ entries: [{ tag: 282, type: 5, values: [300, 0, 0, 0] }] }]);
    expect(valuesOf(bytes)).toEqual([{ 282: [Number.POSITIVE_INFINITY, Number.NaN] }]);
  });

  it('never throws and never reads far: any bytes behind a header', () => {
    fc.assert(
      fc.property(
        fc.constantFrom('II*\0', 'MM\0*', 'II+\0\x08\0\0\0'),
        fc.uint8Array({ maxLength: 400 }),
        (magic, rest) => {
          const bytes = new Uint8Array(Buffer.concat([Buffer.from(magic, 'latin1'), rest]));
          for (const directory of readTiffTags(bytes)?.directories ?? [])
            for (const tag of directory.values()) {
              expect(tag.bytes.length).toBeLessThanOrEqual(bytes.length);
              expect(readTagNumbers(tag)).toHaveLength(tag.count);
            }
        },
      ),
      { seed: 3, numRuns: 3000 },
    );
  });

  it('stops reading a hostile chain of overlapping directories', () => {
    // A thousand directories of 5,000 entries each, four bytes apart: 5 million entries in 64 kB.
    const bytes = new Uint8Array(65_536);
    const view = new DataView(bytes.buffer);
    bytes.set([0x4d, 0x4d, 0, 42, 0, 0, 0, 8]);
    for (let at = 8; at < 4_008; at += 4) {
      view.setUint16(at, 5_000);
      view.setUint32(at + 2 + 5_000 * 12, at + 4);
    }
    const { directories, complete } = readTiffTags(bytes)!;
    expect(directories).toHaveLength(100); // 500,000 entries
    expect(complete).toBe(false);
  });
});
