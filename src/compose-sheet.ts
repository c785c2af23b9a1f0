import { createHash } from 'node:crypto';
import { BlankcheckError } from './blankcheck-error.ts';
import type { ComposedPrint } from './compose-artwork.ts';
import { composePieces } from './compose-page.ts';
import { type Limits, limitsWith } from './formats/limits.ts';
import { composePdf, type PicturedPage } from './lay-out-pdf.ts';
import type { LaidSheet } from './lay-sheets.ts';
import { encodePrintReady, type PrepareOptions } from './prepare-artwork.ts';
import { mirrorRaster } from './raster/mirror.ts';
import type { Raster } from './raster/raster.ts';
import { turnRaster } from './raster/turn.ts';

export interface ComposeSheetOptions extends PrepareOptions {
  readonly limits?: Partial<Limits>;
  /** The driver mirrors the page: what lies turned on the paper is turned the other way in the file. */
  readonly driverMirrors?: boolean;
}

/**
 * The picture of a sheet: every piece with the very pixels of its own print-ready file, mirrored as a whole where it is
 * the second of a pair, turned where it lies so; and the marks.
 * @throws BlankcheckError `too-slow`, `bad-option` for pieces in inks, whose sheets are PDFs; the signal's reason.
 */
export async function composeSheet(
  sheet: LaidSheet,
  { limits, signal, driverMirrors = false }: ComposeSheetOptions = {},
): Promise<ComposedPrint> {
  const { print } = sheet.pieces[0]!.printed;
  if (print.raster.model === 'cmyk')
    throw new BlankcheckError(
      'bad-option',
      'A sheet in the inks of a printer profile comes as PDF only.\nTake --format pdf, or leave --format out.',
    );
  const { page, pictureOf } = pictureSheet(sheet, driverMirrors, new Map());
  return composePieces(print, page, pictureOf, { limits: limitsWith(limits), signal });
}

/** The picture of each piece as it is sent; `made` holds those of a whole run, so that copies share theirs. */
function pictureSheet(
  { page, pieces }: LaidSheet,
  driverMirrors: boolean,
  made: Map<Raster, Map<string, Raster>>,
): PicturedPage {
  const pictureOf = (at: number): Raster => {
    const { printed, mirroredDesign } = pieces[at]!;
    const { turn } = page.pieces[at]!;
    const { raster } = printed.print;
    const variants = made.get(raster) ?? new Map<string, Raster>();
    made.set(raster, variants);
    const key = `${mirroredDesign} ${turn}`;
    const known = variants.get(key);
    if (known) return known;
    const facing = mirroredDesign ? mirrorRaster(raster) : raster;
    // Mirrored back by the driver, a turn goes the other way round.
    const turned =
      turn === 0
        ? facing
        : turnRaster(facing, driverMirrors && turn !== 180 ? ((360 - turn) as 90 | 270) : turn);
    variants.set(key, turned);
    return turned;
  };
  return { page, pictureOf };
}

/**
 * The bytes of the file of a sheet. Its record names the art by the hash of its artwork, of several by the hash of their
 * hashes in hex, one after the other; and every blank once, with ` + ` between two. @throws as composeSheet
 */
export async function encodeSheet(sheet: LaidSheet, options: ComposeSheetOptions = {}): Promise<Uint8Array> {
  return encode([sheet], await composeSheet(sheet, options), options);
}

/** The bytes of one PDF with a page for each sheet; a picture that is printed several times is in it once. Record as of encodeSheet. */
export async function encodeSheetsAsPdf(
  sheets: readonly LaidSheet[],
  options: Omit<ComposeSheetOptions, 'format'> = {},
): Promise<Uint8Array> {
  const { driverMirrors = false } = options;
  const made = new Map<Raster, Map<string, Raster>>();
  const pages = sheets.map((sheet) => pictureSheet(sheet, driverMirrors, made));
  const composed = composePdf(sheets[0]!.pieces[0]!.printed.print, pages, driverMirrors);
  return encode(sheets, composed, { ...options, format: 'pdf' });
}

function encode(
  sheets: readonly LaidSheet[],
  composed: ComposedPrint,
  options: ComposeSheetOptions,
): Promise<Uint8Array> {
  const pieces = sheets.flatMap((sheet) => sheet.pieces);
  const hashes = distinct(pieces.map(({ printed }) => printed.sha256));
  const sha256 =
    hashes.length === 1 ? hashes[0]! : createHash('sha256').update(hashes.join('')).digest('hex');
  const id = distinct(pieces.map(({ blank }) => blank)).join(' + ');
  return encodePrintReady({ sha256 }, { blank: { id } }, composed, options);
}

function distinct(words: readonly string[]): readonly string[] {
  return [...new Set(words)];
}
