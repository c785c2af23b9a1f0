import { createHash } from 'node:crypto';
import { composePieces } from './compose-page.ts';
import { type Limits, limitsWith } from './formats/limits.ts';
import type { LaidSheet } from './lay-sheets.ts';
import { type ComposedPrint, encodePrintReady, type PrepareOptions } from './prepare-artwork.ts';
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
 * the second of a pair, turned where it lies so; and the marks. @throws BlankcheckError `too-slow`, the signal's reason.
 */
export function composeSheet(
  { page, pieces }: LaidSheet,
  { limits, signal, driverMirrors = false }: ComposeSheetOptions = {},
): Promise<ComposedPrint> {
  const made = new Map<Raster, Map<string, Raster>>();
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
  return composePieces(pieces[0]!.printed.print, page, pictureOf, { limits: limitsWith(limits), signal });
}

/**
 * The bytes of the file of a sheet. Its record names the art by the hash of its artwork, of several by the hash of their
 * hashes in hex, one after the other; and every blank once, with ` + ` between two. @throws as composeSheet
 */
export async function encodeSheet(sheet: LaidSheet, options: ComposeSheetOptions = {}): Promise<Uint8Array> {
  const composed = await composeSheet(sheet, options);
  const hashes = distinct(sheet.pieces.map(({ printed }) => printed.sha256));
  const sha256 =
    hashes.length === 1 ? hashes[0]! : createHash('sha256').update(hashes.join('')).digest('hex');
  const id = distinct(sheet.pieces.map(({ blank }) => blank)).join(' + ');
  return encodePrintReady({ sha256 }, { blank: { id } }, composed, options);
}

function distinct(words: readonly string[]): readonly string[] {
  return [...new Set(words)];
}
