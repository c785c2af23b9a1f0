import { createHash } from 'node:crypto';
import type { StatedPpi } from './formats/artwork.ts';
import type { StatedColour } from './formats/container-facts.ts';
import type { Limits } from './formats/limits.ts';
import { hashPixels, type PrintRecord } from './formats/print-record.ts';
import { readStoredPicture, type StoredPicture } from './formats/read-stored-picture.ts';
import { MM_PER_INCH } from './geometry/length.ts';
import { isSrgb } from './icc/is-srgb.ts';
import { readProfile } from './icc/read-profile.ts';
import { type Inspection, PRINT_CHANGES, type PrintChange } from './reports/inspection.ts';

/**
 * Reads a print-ready file (or a proof) back: what it is, its true size, and whether it was changed since.
 * @throws as readArtwork where the picture cannot be read; `unsupported-format` for a drawing.
 */
export async function inspectPrintReady(
  bytes: Uint8Array,
  options: { readonly limits?: Partial<Limits>; readonly signal?: AbortSignal } = {},
): Promise<Inspection> {
  const picture = await readStoredPicture(bytes, options);
  const { format, sha256, raster, statedPpi, record } = picture;
  const { widthPx, heightPx } = raster;
  return {
    format,
    sha256,
    widthPx,
    heightPx,
    statedPpi,
    statedMm: statedPpi && {
      width: (widthPx / statedPpi.x) * MM_PER_INCH,
      height: (heightPx / statedPpi.y) * MM_PER_INCH,
    },
    record,
    changes: record ? findChanges(picture, record) : [],
  };
}

function findChanges(picture: StoredPicture, record: PrintRecord): readonly PrintChange[] {
  const { raster, statedPpi, orientation, colour } = picture;
  const changed: Readonly<Record<PrintChange, boolean>> = {
    pixels: orientation === 1 && hashPixels(raster) !== record.pixelSha256,
    density: !statesDensity(statedPpi, record),
    profile: !statesColours(colour, record),
    orientation: orientation !== 1,
  };
  return PRINT_CHANGES.filter((change) => changed[change]);
}

/** PNG counts in whole pixels per metre: at 1 ppi half of one is 1.3 %, at 300 a tenth of a thousandth. */
const HALF_PIXEL_PER_METRE_PPI = 0.5 * 0.0254;

function statesDensity(
  stated: StatedPpi | null,
  { ppi, densityPpi = { x: ppi, y: ppi } }: PrintRecord,
): boolean {
  const same = (one: number, other: number) =>
    Math.abs(one - other) <= HALF_PIXEL_PER_METRE_PPI + 1e-6 * other;
  return stated !== null && same(stated.x, densityPpi.x) && same(stated.y, densityPpi.y);
}

function statesColours(colour: StatedColour, { printerProfile }: PrintRecord): boolean {
  if (colour.kind === 'srgb') return printerProfile === undefined;
  if (colour.kind !== 'icc') return false;
  if (printerProfile)
    return createHash('sha256').update(colour.bytes).digest('hex') === printerProfile.sha256;
  try {
    return isSrgb(readProfile(colour.bytes));
  } catch {
    return false;
  }
}
