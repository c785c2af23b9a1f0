import { BlankcheckError } from '../blankcheck-error.ts';
import type { ArtworkFormat } from './artwork.ts';
import { namedFormat, startsWith } from './other-formats.ts';
import { readPrintRecord } from './print-record.ts';
import { looksLikeSvg } from './svg-text.ts';

/**
 * The format that the bytes themselves show; the file's name never decides. Null when it is no format we read.
 * Says nothing about whether the file is whole. An SVG may be gzip-compressed (`svgz`).
 */
export function sniffFormat(bytes: Uint8Array): ArtworkFormat | null {
  if (startsWith(bytes, '\x89PNG\r\n\x1a\n')) return 'png';
  if (startsWith(bytes, '\xff\xd8\xff')) return 'jpeg';
  if (startsWith(bytes, 'RIFF') && startsWith(bytes, 'WEBP', 8)) return 'webp';
  if (startsWith(bytes, 'GIF87a') || startsWith(bytes, 'GIF89a')) return 'gif';
  if (['II*\0', 'MM\0*', 'II+\0', 'MM\0+'].some((magic) => startsWith(bytes, magic))) return 'tiff';
  if (startsWith(bytes, 'ftyp', 4))
    return brandsOf(bytes).some((brand) => brand === 'avif' || brand === 'avis') ? 'avif' : null;
  return looksLikeSvg(bytes) ? 'svg' : null;
}

/**
 * The format, or an error that says what the file is instead and what to do about it.
 * @throws `empty-file`, `unsupported-format` (a format that we know and do not read), `unknown-format`
 */
export function requireFormat(bytes: Uint8Array): ArtworkFormat {
  if (bytes.length === 0)
    throw new BlankcheckError('empty-file', 'The file is empty (0 bytes). Export or download it again.');
  const format = sniffFormat(bytes);
  if (format !== null) return format;
  const other = namedFormat(bytes);
  const own = other?.name === 'a PDF' ? readPrintRecord(bytes) : null;
  if (own !== null)
    throw new BlankcheckError(
      'unsupported-format',
      `This is a print-ready PDF of this program, made for ${own.blankId}, and no art: print it as it is, at 100 %, or start from the original art.`,
    );
  if (other !== null)
    throw new BlankcheckError(
      'unsupported-format',
      `This is ${other.name}, which is not read: ${other.remedy}.`,
    );
  throw new BlankcheckError(
    'unknown-format',
    'This is no picture that can be read: its first bytes are none of PNG, JPEG, WebP, TIFF, AVIF, GIF or SVG. Export the artwork as PNG.',
  );
}

/** Major and compatible brands of an ISO base media file (ISO/IEC 14496-12, 4.3). */
function brandsOf(bytes: Uint8Array): string[] {
  const size = Math.min(
    new DataView(bytes.buffer, bytes.byteOffset, bytes.length).getUint32(0),
    bytes.length,
    256,
  );
  const brands: string[] = [];
  for (let at = 8; at + 4 <= size; at += 4)
    if (at !== 12) brands.push(String.fromCharCode(...bytes.subarray(at, at + 4)));
  return brands;
}
