import { gzipSync } from 'node:zlib';
import { describe, expect, it } from 'vitest';
import { requireFormat, sniffFormat } from '../../src/formats/sniff.ts';
import { makeSmallFiles } from './small-files.ts';

const bytesOf = (text: string, length = 64) => {
  const bytes = new Uint8Array(Math.max(length, text.length));
  bytes.set(Uint8Array.from(text, (character) => character.charCodeAt(0)));
  return bytes;
};
const ftyp = (...brands: string[]) =>
  bytesOf(
    `\0\0\0${String.fromCharCode(12 + brands.length * 4)}ftyp${brands[0]}\0\0\0\0${brands.slice(1).join('')}`,
  );
const codeOf = (bytes: Uint8Array) => {
  try {
    return requireFormat(bytes);
  } catch (error) {
    return `${(error as { code: string }).code}: ${(error as Error).message}`;
  }
};
const SMALL_FILES = Object.entries(await makeSmallFiles());

describe('format by the first bytes', () => {
  it.each(SMALL_FILES)('%s', (name, bytes) => {
    expect(sniffFormat(bytes)).toBe(name.split(/[ ,]/)[0]);
  });

  it('AVIF by any of its brands, HEIC and films by theirs', () => {
    expect(sniffFormat(ftyp('avif', 'mif1', 'miaf'))).toBe('avif');
    expect(sniffFormat(ftyp('mif1', 'avif', 'miaf'))).toBe('avif');
    expect(sniffFormat(ftyp('avis', 'msf1'))).toBe('avif');
    expect(codeOf(ftyp('heic', 'mif1'))).toMatch(/^unsupported-format: This is a HEIC photo/);
    expect(codeOf(ftyp('isom', 'mp42'))).toMatch(/^unsupported-format: This is a film/);
  });

  it('BigTIFF and both byte orders', () => {
    for (const magic of ['II*\0', 'MM\0*', 'II+\0', 'MM\0+'])
      expect(sniffFormat(bytesOf(magic))).toBe('tiff');
  });

  const SVG = '<svg xmlns="http://www.w3.org/2000/svg"/>';
  it.each([
    ['bare', Buffer.from(SVG)],
    [
      'after declaration, comment, white space and document type',
      Buffer.from(
        `<?xml version="1.0"?>\n<!-- ${'x'.repeat(3000)} -->\n<!DOCTYPE svg [ <!ENTITY a "b"> ]>\n${SVG}`,
      ),
    ],
    ['with a byte order mark', Buffer.from(`\ufeff${SVG}`)],
    ['in UTF-16, little endian', Buffer.from(`\ufeff${SVG}`, 'utf16le')],
    ['in UTF-16, big endian, without a mark', Buffer.from(SVG, 'utf16le').swap16()],
    ['with a prefix', Buffer.from('<s:svg xmlns:s="http://www.w3.org/2000/svg"/>')],
    ['compressed', gzipSync(SVG)],
  ])('SVG %s', (_, bytes) => {
    expect(sniffFormat(bytes)).toBe('svg');
  });

  it.each([
    ['a PDF', bytesOf('%PDF-1.7'), 'unsupported-format: This is a PDF'],
    ['a PDF with bytes before it', bytesOf('\0\0\x07%PDF-1.4'), 'unsupported-format: This is a PDF'],
    ['PostScript', bytesOf('%!PS-Adobe-3.0 EPSF-3.0'), 'unsupported-format: This is a PostScript'],
    ['EPS with a preview', bytesOf('\xc5\xd0\xd3\xc6'), 'unsupported-format: This is a PostScript'],
    ['layers', bytesOf('8BPS\0\x01'), "unsupported-format: This is an image editor's layered file"],
    ['JPEG XL, bare', bytesOf('\xff\x0a'), 'unsupported-format: This is a JPEG XL'],
    ['JPEG XL, boxed', bytesOf('\0\0\0\x0cJXL \r\n\x87\n'), 'unsupported-format: This is a JPEG XL'],
    ['JPEG 2000', bytesOf('\0\0\0\x0cjP  \r\n\x87\n'), 'unsupported-format: This is a JPEG 2000'],
    ['BMP', bytesOf('BM\0\0\0\0\0\0\0\0\0\0\0\0\x28\0\0\0'), 'unsupported-format: This is a BMP'],
    ['an icon', bytesOf('\0\0\x01\0\x01\0'), 'unsupported-format: This is an icon'],
    ['a ZIP', bytesOf('PK\x03\x04'), 'unsupported-format: This is a ZIP'],
    ['gzip of something else', gzipSync('hello'), 'unsupported-format: This is an archive'],
    ['a font', bytesOf('wOF2'), 'unsupported-format: This is a font'],
    [
      'a web page',
      Buffer.from('\n<!DOCTYPE html><html><body><svg></svg></body></html>'),
      'unsupported-format: This is a web page',
    ],
    [
      'a web page after a comment',
      Buffer.from('<!-- saved --><html><svg/></html>'),
      'unsupported-format: This is a web page',
    ],
    [
      'text',
      Buffer.from('buy seeds, stakes and twine — before March'),
      'unsupported-format: This is a text file',
    ],
    [
      'text that begins as a BMP does',
      Buffer.from('BM: buy more seeds, stakes, twine'),
      'unsupported-format: This is a text file',
    ],
    ['nothing known', Uint8Array.of(1, 2, 3, 0, 4), 'unknown-format: '],
    ['no byte', new Uint8Array(0), 'empty-file: '],
  ])('%s is refused by name', (_, bytes, expected) => {
    expect(sniffFormat(bytes)).toBe(null);
    expect(codeOf(bytes)).toContain(expected);
  });
});
