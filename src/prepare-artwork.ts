import type { PicturedArtwork } from './check-artwork.ts';
import type { PrintPicture } from './checks/define-check.ts';
import type { Artwork, OwnColours } from './formats/artwork.ts';
import { convertToSrgb } from './formats/convert-to-srgb.ts';
import { encodePng } from './formats/png-write.ts';
import { hashPixels, type PrintRecord } from './formats/print-record.ts';
import { resample } from './formats/resample.ts';
import { encodeTiff } from './formats/tiff-write.ts';
import { composePrint } from './prepare/carry-out.ts';
import type { PrintPlan } from './prepare/step.ts';
import type { Raster } from './raster/raster.ts';
import { VERSION } from './version.ts';

export type PrintReadyFormat = 'png' | 'tiff';

export interface PrepareOptions {
  readonly format?: PrintReadyFormat;
  readonly signal?: AbortSignal;
}

/** A print-ready picture in memory: 8-bit sRGB, as its plan says; and the picture of the art that it was made of. */
export interface ComposedPrint {
  readonly picture: PrintPicture;
  readonly plan: PrintPlan;
  readonly raster: Raster;
}

/**
 * The bytes of the print-ready file: 8-bit sRGB, exact density, the program's own record. Same input, same bytes.
 * null when nothing is visible. The artwork and its picture are not changed. @throws the signal's reason.
 */
export async function prepareArtwork(
  artwork: Pick<Artwork, 'sha256' | 'ownColours'>,
  pictured: Pick<PicturedArtwork, 'blank' | 'plan' | 'picture'>,
  options: PrepareOptions = {},
): Promise<Uint8Array | null> {
  const composed = await composeArtwork(artwork, pictured, options.signal);
  options.signal?.throwIfAborted();
  return composed && encodePrintReady(artwork, pictured, composed, options);
}

/** The print-ready picture before it is encoded; null when nothing is visible. @throws the signal's reason. */
export async function composeArtwork(
  { ownColours }: Pick<Artwork, 'ownColours'>,
  { plan, picture }: Pick<PicturedArtwork, 'plan' | 'picture'>,
  signal?: AbortSignal,
): Promise<ComposedPrint | null> {
  if (plan === null || picture === null) return null;
  const raster = await composePrint(picture.raster, plan, {
    resample,
    ...(ownColours ? { convert: converterFrom(ownColours) } : {}),
    ...(signal ? { signal } : {}),
  });
  return { picture, plan, raster };
}

/** The bytes of the print-ready file of a composed picture. */
export async function encodePrintReady(
  artwork: Pick<Artwork, 'sha256'>,
  { blank }: Pick<PicturedArtwork, 'blank'>,
  { plan, raster }: ComposedPrint,
  { format = 'png' }: PrepareOptions = {},
): Promise<Uint8Array> {
  const record: PrintRecord = {
    program: 'blankcheck',
    version: VERSION,
    sourceSha256: artwork.sha256,
    pixelSha256: hashPixels(raster),
    blankId: blank.id,
    widthMm: plan.widthMm,
    heightMm: plan.heightMm,
    ppi: plan.ppi,
    mirrored: plan.mirrored,
  };
  const encode = format === 'png' ? encodePng : encodeTiff;
  return encode(raster, { ppi: plan.ppi, record });
}

/** On a copy: the picture stays as it was judged. */
function converterFrom({ toSrgb }: OwnColours): (raster: Raster) => Raster {
  return (raster) => convertToSrgb({ ...raster, data: raster.data.slice() }, toSrgb);
}
