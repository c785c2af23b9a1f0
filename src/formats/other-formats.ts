import { prologLength } from './svg-text.ts';

/** A format that is known by its bytes and not read. */
export interface OtherFormat {
  readonly name: string;
  readonly remedy: string;
  readonly matches: (bytes: Uint8Array) => boolean;
}

/** True when `magic` (Latin-1) stands at `offset`. */
export function startsWith(bytes: Uint8Array, magic: string, offset = 0): boolean {
  for (let index = 0; index < magic.length; index++)
    if (bytes[offset + index] !== magic.charCodeAt(index)) return false;
  return true;
}

const beginsWith =
  (...magics: readonly string[]) =>
  (bytes: Uint8Array) =>
    magics.some((magic) => startsWith(bytes, magic));

/** ISO base media file whose major brand is one of these (ISO/IEC 14496-12, 4.3). */
const hasBrand =
  (...brands: readonly string[]) =>
  (bytes: Uint8Array) =>
    startsWith(bytes, 'ftyp', 4) && brands.some((brand) => startsWith(bytes, brand, 8));

const headText = (bytes: Uint8Array) => String.fromCharCode(...bytes.subarray(0, 1024));

const EXPORT_PNG = 'export the artwork as PNG with a transparent background, at the print size';

/** Magic numbers as their specifications give them; the first row that matches names the file. */
const OTHER_FORMATS: readonly OtherFormat[] = [
  { name: 'a PDF', remedy: EXPORT_PNG, matches: (bytes) => headText(bytes).includes('%PDF-') },
  {
    name: 'a PostScript, EPS or drawing-program file',
    remedy: EXPORT_PNG,
    matches: beginsWith('%!PS', '\xc5\xd0\xd3\xc6'),
  },
  { name: "an image editor's layered file (PSD or PSB)", remedy: EXPORT_PNG, matches: beginsWith('8BPS') },
  { name: "an image editor's layered file (XCF)", remedy: EXPORT_PNG, matches: beginsWith('gimp xcf') },
  {
    name: 'a HEIC photo',
    remedy: 'convert it to JPEG or PNG first',
    matches: hasBrand('heic', 'heix', 'heim', 'heis', 'hevc', 'hevx', 'mif1', 'msf1'),
  },
  {
    name: 'a JPEG XL picture',
    remedy: 'convert it to PNG first',
    matches: beginsWith('\xff\x0a', '\0\0\0\x0cJXL '),
  },
  {
    name: 'a JPEG 2000 picture',
    remedy: 'convert it to PNG first',
    matches: beginsWith('\0\0\0\x0cjP  ', '\xff\x4f\xff\x51'),
  },
  {
    name: 'a BMP picture',
    remedy: 'convert it to PNG first',
    matches: (bytes) => startsWith(bytes, 'BM') && isBitmap(bytes),
  },
  {
    name: 'an icon file',
    remedy: 'export the largest picture in it as PNG',
    matches: beginsWith('\0\0\x01\0', 'icns'),
  },
  {
    name: 'an OpenEXR picture',
    remedy: 'convert it to a 16-bit TIFF first',
    matches: beginsWith('\x76\x2f\x31\x01'),
  },
  {
    name: 'a ZIP archive',
    remedy: 'unpack it, or name the archive itself as artwork, not in a job file nor through standard input',
    matches: beginsWith('PK\x03\x04', 'PK\x05\x06'),
  },
  {
    name: 'an archive',
    remedy: 'unpack it first',
    matches: beginsWith('7z\xbc\xaf\x27\x1c', 'Rar!\x1a\x07', '\x1f\x8b', 'BZh', '\xfd7zXZ\0'),
  },
  {
    name: 'a font',
    remedy: 'it is no artwork',
    matches: beginsWith('\0\x01\0\0\0', 'OTTO', 'wOFF', 'wOF2', 'ttcf'),
  },
  {
    name: 'a film',
    remedy: 'export one frame as PNG',
    matches: (bytes) => startsWith(bytes, 'ftyp', 4) || startsWith(bytes, '\x1a\x45\xdf\xa3'),
  },
  {
    name: 'a web page',
    remedy: 'a download often saves the page instead of the picture: download the picture itself',
    matches: isWebPage,
  },
  { name: 'a text file', remedy: 'it is no artwork', matches: isText },
];

/** The first row that fits, or null. */
export function namedFormat(bytes: Uint8Array): OtherFormat | null {
  return OTHER_FORMATS.find(({ matches }) => matches(bytes)) ?? null;
}

/** Two letters prove little: the header size must be one that a BMP can have. */
function isBitmap(bytes: Uint8Array): boolean {
  return bytes.length > 18 && [12, 40, 52, 56, 64, 108, 124].includes(bytes[14]!) && bytes[15] === 0;
}

function isWebPage(bytes: Uint8Array): boolean {
  const text = headText(bytes).replace(/^\xef\xbb\xbf/, '');
  const prolog = prologLength(text);
  return (
    /<!doctype\s+html\b/i.test(text.slice(0, prolog)) || /^<(?:html|head|body)\b/i.test(text.slice(prolog))
  );
}

/** UTF-8 without control characters, in the first kilobyte. */
function isText(bytes: Uint8Array): boolean {
  const head = bytes.subarray(0, 1024);
  const text = new TextDecoder().decode(head, { stream: true });
  return !/[\p{Cc}\ufffd]/u.test(text.replace(/[\t\n\f\r]/g, ''));
}
