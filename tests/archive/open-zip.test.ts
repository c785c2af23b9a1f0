import { describe, expect, it } from 'vitest';
import { writeExtraField, writeZip, type ZipEntryRecipe } from '../../fixtures/byte-writers/write-zip.ts';
import { openZip } from '../../src/archive/open-zip.ts';
import { readZipEntries } from '../../src/archive/read-zip.ts';
import { ZIP_LIMITS } from '../../src/archive/zip-limits.ts';

const GOOD: ZipEntryRecipe = { name: 'pear.png', content: 'a pear' };
const text = (bytes: Uint8Array) => new TextDecoder().decode(bytes);

/** What became of every entry: its text, or the code of its error. */
async function contents(archive: Uint8Array, limits = ZIP_LIMITS): Promise<Record<string, string>> {
  const found: Record<string, string> = {};
  for await (const item of readZipEntries(archive, { limits }))
    found[item.name] = 'bytes' in item ? text(item.bytes) : item.error.code;
  return found;
}

const codeOf = (promise: Promise<unknown>) =>
  promise.then(
    () => null,
    (error: { code?: string }) => error.code,
  );

describe('a plain archive', () => {
  it('gives its files by name in code units, stored and deflated alike, and no folders', async () => {
    const archive = writeZip([
      { name: 'beds/' },
      { name: 'beds/pear.png', content: 'pear' },
      { name: 'apple.png', content: 'apple', method: 0 },
      { name: 'Zinnia.png', content: '' },
    ]);
    expect((await openZip(archive)).entries.map(({ name }) => name)).toEqual([
      'Zinnia.png',
      'apple.png',
      'beds/pear.png',
    ]);
    expect(await contents(archive)).toEqual({
      'Zinnia.png': '',
      'apple.png': 'apple',
      'beds/pear.png': 'pear',
    });
  });

  it('may be empty, may have a comment, may lie inside a larger buffer', async () => {
    expect(await contents(writeZip([]))).toEqual({});
    const archive = writeZip([GOOD], { comment: 'spring sale' });
    const larger = new Uint8Array(archive.length + 20);
    larger.set(archive, 10);
    expect(await contents(larger.subarray(10, 10 + archive.length))).toEqual({ 'pear.png': 'a pear' });
  });

  it('counts hidden files and resource forks, and leaves them out', async () => {
    const archive = await openZip(
      writeZip([GOOD, { name: '__MACOSX/._pear.png' }, { name: '.DS_Store' }, { name: '__MACOSX/' }]),
    );
    expect(archive.entries.map(({ name }) => name)).toEqual(['pear.png']);
    expect(archive.sidecars).toBe(2);
  });

  it('unpacks only as much of a file as the head that is asked for', async () => {
    const archive = await openZip(writeZip([{ name: 'long.png', content: 'ab'.repeat(1e6), crc32: 1 }]));
    expect(text(await archive.readHead(archive.entries[0]!, 5))).toBe('ababa');
    expect((await archive.readHead(archive.entries[0]!, 3e6)).length).toBe(2e6);
  });
});

describe('one bad entry costs no other', () => {
  const link = { externalAttributes: 0o120777 * 0x10000 };
  const zip64Size = writeExtraField(1, Buffer.from(BigUint64Array.of(2n ** 40n).buffer));
  const cases: [string, ZipEntryRecipe, string][] = [
    ['a name that leads out', { name: '../bad.png', content: 'x' }, 'archive-entry-refused'],
    ['the same with backslashes', { name: '..\\bad.png', content: 'x' }, 'archive-entry-refused'],
    ['an absolute name', { name: '/bad.png', content: 'x' }, 'archive-entry-refused'],
    ['a drive letter', { name: 'C:\\bad.png', content: 'x' }, 'archive-entry-refused'],
    ['NUL in the name', { name: 'bad.png\0.txt', content: 'x' }, 'archive-entry-refused'],
    ['a device name', { name: 'CON.png', content: 'x' }, 'archive-entry-refused'],
    ['a link', { name: 'bad.png', content: '/etc/passwd', ...link }, 'archive-entry-refused'],
    ['a device', { name: 'bad.png', externalAttributes: 0o020644 * 0x10000 }, 'archive-entry-refused'],
    ['an archive inside', { name: 'bad.ZIP', content: 'PK' }, 'archive-entry-refused'],
    ['encryption', { name: 'bad.png', content: 'x', flags: 0x801 }, 'archive-entry-refused'],
    ['an unknown packing', { name: 'bad.png', content: 'x', method: 12 }, 'archive-entry-refused'],
    [
      'ZIP64 claiming a terabyte',
      { name: 'bad.png', content: 'x', unpackedBytes: 0xffffffff, extra: zip64Size },
      'archive-entry-refused',
    ],
    ['a wrong checksum', { name: 'bad.png', content: 'x', crc32: 0 }, 'archive-damaged'],
    ['a stated size too small', { name: 'bad.png', content: 'xyz', unpackedBytes: 2 }, 'archive-damaged'],
    ['a stated size too large', { name: 'bad.png', content: 'xyz', unpackedBytes: 4 }, 'archive-damaged'],
    [
      'a stored size that lies',
      { name: 'bad.png', content: 'xyz', method: 0, unpackedBytes: 9 },
      'archive-damaged',
    ],
    [
      'broken packed data',
      { name: 'bad.png', content: 'xyz', packed: Buffer.from('garbage') },
      'archive-damaged',
    ],
    [
      'packed data cut short',
      { name: 'bad.png', content: 'x'.repeat(99), packedBytes: 2 },
      'archive-damaged',
    ],
    [
      'packed data beyond the archive',
      { name: 'bad.png', content: 'x', packedBytes: 1e6 },
      'archive-damaged',
    ],
    [
      'no local header where it should be',
      { name: 'bad.png', content: 'x', localHeaderOffset: 3 },
      'archive-damaged',
    ],
  ];

  it.each(cases)('%s', async (_, bad, code) => {
    const found = await contents(writeZip([GOOD, bad, { name: 'quince.png', content: 'a quince' }]));
    expect(found['pear.png']).toBe('a pear');
    expect(found['quince.png']).toBe('a quince');
    expect(Object.values(found).filter((text) => text === code)).toHaveLength(1);
    expect(Object.keys(found)).toHaveLength(3);
  });

  it('two of one name: neither is guessed to be the right one', async () => {
    const archive = await openZip(
      writeZip([GOOD, { name: 'twice.png', content: '1' }, { name: 'twice.png', content: '2' }]),
    );
    expect(archive.entries.map(({ name, refusal }) => [name, refusal?.code])).toEqual([
      ['pear.png', undefined],
      ['twice.png', 'archive-entry-refused'],
      ['twice.png', 'archive-entry-refused'],
    ]);
  });

  it('a directory that breaks off: what was before it is read, and the break is told last', async () => {
    expect(await contents(writeZip([GOOD], { entryCount: 2 }))).toEqual({
      'pear.png': 'a pear',
      '': 'archive-damaged',
    });
  });
});

describe('limits', () => {
  const hundred = { name: 'flat.png', content: 'x'.repeat(100) };

  it('of one entry: at the limit it passes, above it is refused', async () => {
    expect(await contents(writeZip([hundred]), { ...ZIP_LIMITS, entryBytes: 100 })).toEqual({
      'flat.png': hundred.content,
    });
    expect(await contents(writeZip([hundred]), { ...ZIP_LIMITS, entryBytes: 99 })).toEqual({
      'flat.png': 'archive-entry-refused',
    });
  });

  it('of all entries together: the first that goes beyond it is refused', async () => {
    const archive = writeZip([hundred, { ...hundred, name: 'more.png' }]);
    expect(await contents(archive, { ...ZIP_LIMITS, totalBytes: 200 })).toEqual({
      'flat.png': hundred.content,
      'more.png': hundred.content,
    });
    expect(await contents(archive, { ...ZIP_LIMITS, totalBytes: 199 })).toEqual({
      'flat.png': hundred.content,
      'more.png': 'archive-entry-refused',
    });
  });

  it('of the ratio: an honest bomb is refused before a byte of it is unpacked, a small blank page is not', async () => {
    const bomb = { name: 'bomb.png', content: new Uint8Array(ZIP_LIMITS.ratioFromBytes) };
    const page = { name: 'page.png', content: new Uint8Array(ZIP_LIMITS.ratioFromBytes - 1) };
    const found = await contents(writeZip([bomb, page]));
    expect(found['bomb.png']).toBe('archive-entry-refused');
    expect(found['page.png']).toHaveLength(page.content.length);
  });

  it('of the number of entries, as the archive states it', async () => {
    const archive = writeZip([GOOD, hundred]);
    expect(await codeOf(openZip(archive, { ...ZIP_LIMITS, entries: 2 }))).toBeNull();
    expect(await codeOf(openZip(archive, { ...ZIP_LIMITS, entries: 1 }))).toBe('archive-entry-refused');
    const claim = { entryCount: 2n ** 60n, directoryOffset: 0n };
    expect(await codeOf(openZip(writeZip([GOOD], { zip64: claim })))).toBe('archive-entry-refused');
  });
});

describe('no archive at all', () => {
  const whole = writeZip([GOOD]);
  it.each([
    ['nothing', new Uint8Array(0)],
    ['other bytes', new TextEncoder().encode('PK is not enough')],
    ['cut off', whole.subarray(0, whole.length - 1)],
    ['something behind it', new Uint8Array([...whole, 0])],
    [
      'a ZIP64 directory beyond its end',
      writeZip([GOOD], { zip64: { entryCount: 0n, directoryOffset: 0n } }).subarray(30),
    ],
  ])('%s', async (_, bytes) => expect(await codeOf(openZip(bytes))).toBe('archive-damaged'));

  it('a directory that is not where the end record says', async () => {
    expect(await contents(writeZip([GOOD], { directoryOffset: 0 }))).toEqual({ '': 'archive-damaged' });
    expect(await contents(writeZip([GOOD], { directoryOffset: 0xfffffff0 }))).toEqual({
      '': 'archive-damaged',
    });
    expect(
      await contents(writeZip([GOOD], { zip64: { entryCount: 1n, directoryOffset: 2n ** 62n } })),
    ).toEqual({ '': 'archive-damaged' });
  });
});

describe('an interrupt', () => {
  it('ends the unpacking', async () => {
    const interrupt = AbortSignal.abort(new Error('interrupted'));
    const archive = await openZip(writeZip([GOOD]));
    await expect(archive.read(archive.entries[0]!, interrupt)).rejects.toThrow('interrupted');
  });
});
