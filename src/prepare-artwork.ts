import type { PicturedArtwork } from './check-artwork.ts';
import type { Artwork, OwnColours } from './formats/artwork.ts';
import { convertToSrgb } from './formats/convert-to-srgb.ts';
import { encodePng } from './formats/png-write.ts';
import { hashPixels, type PrintRecord } from './formats/print-record.ts';
import { resample } from './formats/resample.ts';
import { encodeTiff } from './formats/tiff-write.ts';
import { composePrint } from './prepare/carry-out.ts';
import type { Raster } from './raster/raster.ts';
import { VERSION } from './version.ts';

export type PrintReadyFormat = 'png' | 'tiff';

export interface PrepareOptions {
  readonly format?: PrintReadyFormat;
  readonly signal?: AbortSignal;
}

/**
 * The bytes of the print-ready file: 8-bit sRGB, exact density, the program's own record. Same input, same bytes.
 * null when nothing is visible. The artwork and its picture are not changed. @throws the signal's reason.
 */
export async function prepareArtwork(
  artwork: Pick<Artwork, 'sha256' | 'ownColours'>,
  { blank, plan, picture }: Pick<PicturedArtwork, 'blank' | 'plan' | 'picture'>,
  options: PrepareOptions = {},
): Promise<Uint8Array | null> {
  if (plan === null || picture === null) return null;
  const { signal, format = 'png' } = options;
  const raster = await composePrint(picture.raster, plan, {
    resample,
    ...(artwork.ownColours ? { convert: converterFrom(artwork.ownColours) } : {}),
    ...(signal ? { signal } : {}),
  });
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
  signal?.throwIfAborted();
  const encode = format === 'png' ? encodePng : encodeTiff;
  return encode(raster, { ppi: plan.ppi, record });
}

/** On a copy: the picture stays as it was judged. */
function converterFrom({ toSrgb }: OwnColours): (raster: Raster) => Raster {
  return (raster) => convertToSrgb({ ...raster, data: raster.data.slice() }, toSrgb);
}
