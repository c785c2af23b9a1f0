import type { PicturedArtwork } from './check-artwork.ts';
import { type ComposedPrint, composeArtwork } from './compose-artwork.ts';
import type { PrinterConversion } from './conditions/printer-conversion.ts';
import type { Artwork } from './formats/artwork.ts';
import { encodePdf, picturesOf } from './formats/pdf-write.ts';
import { encodePng } from './formats/png-write.ts';
import { hashPictures, hashPixels, type PrintRecord } from './formats/print-record.ts';
import { encodeTiff } from './formats/tiff-write.ts';
import { composePdfPiece } from './lay-out-pdf.ts';
import { choosePrintReadyFormat, type PrintReadyFormat } from './print-ready-format.ts';
import { VERSION } from './version.ts';

export interface PrepareOptions {
  /** PNG when left out, TIFF for inks, which PNG cannot hold; the pages of a sheet are for PDF. */
  readonly format?: PrintReadyFormat | undefined;
  /** As the plan was made for. */
  readonly conversion?: PrinterConversion | undefined;
  readonly signal?: AbortSignal | undefined;
}

/**
 * The bytes of the print-ready file: 8-bit sRGB or a printer's own colours, exact density, the program's own record.
 * Same input, same bytes. null when nothing is visible. The artwork and its picture are not changed.
 * @throws BlankcheckError `bad-option` for inks as PNG or with a clear background, the signal's reason.
 */
export async function prepareArtwork(
  artwork: Pick<Artwork, 'sha256' | 'ownColours'>,
  pictured: Pick<PicturedArtwork, 'blank' | 'plan' | 'picture'>,
  options: PrepareOptions = {},
): Promise<Uint8Array | null> {
  const composed = await composeArtwork(artwork, pictured, options);
  options.signal?.throwIfAborted();
  if (composed === null) return null;
  const file = options.format === 'pdf' ? composePdfPiece(composed, pictured.blank) : composed;
  return encodePrintReady(artwork, pictured, file, options);
}

/** The bytes of the print-ready file of a composed picture; as PDF, of its pages. */
export async function encodePrintReady(
  artwork: Pick<Artwork, 'sha256'>,
  { blank }: { readonly blank: { readonly id: string } },
  { plan, raster, densityPpi, pages }: ComposedPrint,
  { format: wanted, conversion }: PrepareOptions = {},
): Promise<Uint8Array> {
  const background = { alpha: raster.hasAlpha ? 0 : 1 } as const;
  const format = choosePrintReadyFormat(conversion, { format: wanted, background });
  const record: PrintRecord = {
    program: 'blankcheck',
    version: VERSION,
    sourceSha256: artwork.sha256,
    pixelSha256: pages ? hashPictures(picturesOf(pages)) : hashPixels(raster),
    blankId: blank.id,
    widthMm: plan.widthMm,
    heightMm: plan.heightMm,
    ppi: plan.ppi,
    mirrored: plan.mirrored,
    ...(densityPpi && (densityPpi.x !== plan.ppi || densityPpi.y !== plan.ppi) ? { densityPpi } : {}),
    ...(conversion ? { printerProfile: recordConversion(conversion) } : {}),
  };
  if (format === 'pdf') {
    if (!pages) throw new Error('Expected the pages of the PDF.');
    return encodePdf(pages, {
      record,
      title: blank.id,
      ...(conversion && { profile: conversion.bytes, outputIntent: conversion.name }),
    });
  }
  const encode = format === 'png' ? encodePng : encodeTiff;
  return encode(raster, {
    ppi: plan.ppi,
    record,
    ...(densityPpi ? { densityPpi } : {}),
    ...(conversion ? { profile: conversion.bytes } : {}),
  });
}

function recordConversion({ sha256, name, intent, blackPointCompensation }: PrinterConversion) {
  return { sha256, name, intent, blackPointCompensation: blackPointCompensation && intent !== 'absolute' };
}
