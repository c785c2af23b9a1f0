import { crc32 } from 'node:zlib';
import { describe, expect, it } from 'vitest';
import { writeExtraField, writeZip, type ZipEntryRecipe } from '../../fixtures/byte-writers/write-zip.ts';
import { findNameFault, isSidecarName } from '../../src/archive/entry-name.ts';
import { openZip } from '../../src/archive/open-zip.ts';

const nameOf = async (entry: ZipEntryRecipe) => (await openZip(writeZip([entry]))).entries[0]?.name;

describe('findNameFault', () => {
  it.each([
    ['pear.png'],
    ['beds/north/pear.png'],
    ['beds/'],
    ['Tomates: rouges?.png'], // legal on Unix; the name of what is written is made portable later
    ['..pear.png'],
    ['pear..png'],
    ['con/pear.png'],
    ['console.png'],
    ['com10.png'],
    ['étiquette 木.png'],
  ])('%j is plain', (name) => expect(findNameFault(name)).toBeNull());

  it.each([
    ['', 'empty'],
    ['beds//', 'empty'],
    ['../pear.png', 'leads out'],
    ['beds/../../pear.png', 'leads out'],
    ['..', 'leads out'],
    ['/etc/pear.png', 'absolute'],
    ['//host/share/pear.png', 'absolute'],
    ['C:/pear.png', 'absolute'],
    ['c:pear.png', 'absolute'],
    ['pear\0.png', 'control'],
    ['\u001b[2Jpear.png', 'control'],
    ['pear\n.png', 'control'],
    ['CON.png', 'device'],
    ['beds/nul', 'device'],
    ['aux.tar.png', 'device'],
    ['LPT1.png', 'device'],
    ['com².png', 'device'],
    ['con .png', 'device'],
    ['pear.png.', 'Windows drops'],
    ['pear.png ', 'Windows drops'],
  ])('%j is refused: %s', (name, why) => expect(findNameFault(name)).toContain(why));
});

describe('isSidecarName', () => {
  it.each(['__MACOSX/._pear.png', '._pear.png', '.hidden/pear.png', 'beds/.DS_Store'])('%s is one', (name) =>
    expect(isSidecarName(name)).toBe(true),
  );
  it.each(['pear.png', 'beds/pear.png', 'MACOSX/pear.png'])('%s is none', (name) =>
    expect(isSidecarName(name)).toBe(false),
  );
});

describe('the name of an entry', () => {
  const utf8 = Buffer.from('poirier é.png', 'utf8');
  const cp437 = Buffer.from([0x70, 0x82, 0x2e, 0x70, 0x6e, 0x67]); // é is 0x82 in CP437

  it('is UTF-8 with the flag (APPNOTE.TXT 4.4.4, bit 11)', async () => {
    expect(await nameOf({ name: 'poirier é.png', madeBy: 0 })).toBe('poirier é.png');
  });

  it('is CP437 without it (APPNOTE.TXT D.1)', async () => {
    expect(await nameOf({ name: cp437, madeBy: 0 })).toBe('pé.png');
    expect(await nameOf({ name: utf8, madeBy: 0 })).toBe('poirier ├⌐.png');
  });

  it('is UTF-8 without it from Unix and macOS packers, where the bytes are well-formed', async () => {
    expect(await nameOf({ name: utf8, madeBy: 0x0314 })).toBe('poirier é.png');
    expect(await nameOf({ name: utf8, madeBy: 0x1314 })).toBe('poirier é.png');
    expect(await nameOf({ name: cp437, madeBy: 0x0314 })).toBe('pé.png');
  });

  it('is that of the Unicode path field where its checksum holds (APPNOTE.TXT 4.6.9)', async () => {
    const field = (sum: number) =>
      writeExtraField(
        0x7075,
        Buffer.concat([Buffer.from([1]), Buffer.from(Uint32Array.of(sum).buffer), utf8]),
      );
    expect(await nameOf({ name: cp437, madeBy: 0, extra: field(crc32(cp437)) })).toBe('poirier é.png');
    expect(await nameOf({ name: cp437, madeBy: 0, extra: field(0) })).toBe('pé.png');
  });

  it('has slashes where an old packer wrote backslashes', async () => {
    expect(await nameOf({ name: 'beds\\pear.png' })).toBe('beds/pear.png');
  });
});
