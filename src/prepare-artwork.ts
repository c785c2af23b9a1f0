import type { CheckedArtwork } from './check-artwork.ts';
import type { Artwork } from './formats/artwork.ts';
import { encodePng } from './formats/png-write.ts';
import type { PrintRecord } from './formats/print-record.ts';
import { hashPixels } from './formats/print-record.ts';
import { resample } from './formats/resample.ts';
import { encodeTiff } from './formats/tiff-write.ts';
import { carryOut } from './prepare/carry-out.ts';
import { planPrint } from './prepare/plan.ts';
import type { Background, PrintPlan } from './prepare/step.ts';
import { VERSION } from './version.ts';

export type PrintReadyFormat = 'png' | 'tiff';

export interface PrepareOptions {
  readonly format?: PrintReadyFormat;
  readonly signal?: AbortSignal;
}

const WHITE: Background = { r: 255, g: 255, b: 255, alpha: 1 };

/**
 * The print plan of a checked artwork over a background (white by default); null when nothing is visible.
 * Touches no pixel. @throws BlankcheckError `print-too-large`.
 */
export function planArtwork(
  checked: Pick<CheckedArtwork, 'job' | 'rimPx'>,
  background: Background = WHITE,
): PrintPlan | null {
  return checked.job === null ? null : planPrint(checked.job, { hullPx: checked.rimPx, background });
}

/**
 * The bytes of the print-ready file: 8-bit sRGB, exact density, the program's own record. Same input, same bytes.
 * The artwork is not changed. @throws AbortError when the signal says so.
 */
export async function prepareArtwork(
  artwork: Artwork,
  blankId: string,
  plan: PrintPlan,
  options: PrepareOptions = {},
): Promise<Uint8Array> {
  const { signal, format = 'png' } = options;
  const raster = await carryOut(artwork.raster, plan, { resample, ...(signal ? { signal } : {}) });
  const record: PrintRecord = {
    program: 'blankcheck',
    version: VERSION,
    sourceSha256: artwork.sha256,
    pixelSha256: hashPixels(raster),
    blankId,
    widthMm: plan.widthMm,
    heightMm: plan.heightMm,
    ppi: plan.ppi,
    mirrored: plan.mirrored,
  };
  signal?.throwIfAborted();
  const encode = format === 'png' ? encodePng : encodeTiff;
  return encode(raster, { ppi: plan.ppi, record });
}
