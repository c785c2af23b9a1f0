import { createHash } from 'node:crypto';
import { MM_PER_INCH } from '../geometry/length.ts';
import type { ArtworkFormat, StatedPpi } from './artwork.ts';
import { planColour } from './colour-plan.ts';
import type { InspectionChange } from './inspection.ts';
import { hashPixels, type PrintRecord } from './print-record.ts';
import type { StoredPicture } from './read-stored-picture.ts';

/**
 * How a picture differs from what its record says that it was written as; empty when it prints the same. Samples are
 * hashed as they were when the file was written, so that one changed sample is found.
 */
export function findChanges(
  picture: StoredPicture,
  format: ArtworkFormat,
  record: PrintRecord,
): readonly InspectionChange[] {
  const { orientation, pages } = picture;
  return [
    ...(format === 'png' || format === 'tiff' ? [] : [{ code: 'another-format' } as const]),
    ...findPixelChanges(picture, record),
    ...findDensityChange(picture.statedPpi, record),
    ...findProfileChange(picture, record),
    ...(orientation === 1 ? [] : [{ code: 'orientation', orientation } as const]),
    ...(pages === 1 ? [] : [{ code: 'pages', pages } as const]),
  ];
}

function findPixelChanges({ raster, orientation }: StoredPicture, record: PrintRecord): InspectionChange[] {
  // A tag alone turned them: the samples themselves are not to be had unturned, and the tag is told.
  if (orientation !== 1) return [];
  if (hashPixels(raster) === record.pixelSha256) return [];
  const [width, height] = expectedPx(record);
  // A page's own pixels come from the printer's corrected density, which may round the other way.
  const isNear = Math.abs(raster.widthPx - width) <= 1 && Math.abs(raster.heightPx - height) <= 1;
  return [
    ...(isNear ? [] : [{ code: 'size-in-pixels', expectedPx: { width, height } } as const]),
    { code: 'pixels' },
  ];
}

function expectedPx({ widthMm, heightMm, ...record }: PrintRecord): [number, number] {
  const { x, y } = expectedPpi(record);
  return [Math.round((widthMm / MM_PER_INCH) * x), Math.round((heightMm / MM_PER_INCH) * y)];
}

function expectedPpi({ ppi, densityPpi }: Pick<PrintRecord, 'ppi' | 'densityPpi'>): StatedPpi {
  return densityPpi ?? { x: ppi, y: ppi };
}

/** PNG states whole pixels per metre: half of one, 0.0127 ppi, is rounding. @see ISO/IEC 15948:2004, 11.3.5.3 */
const ROUNDING_PPI = 0.0128;

function findDensityChange(stated: StatedPpi | null, record: PrintRecord): InspectionChange[] {
  const expected = expectedPpi(record);
  if (stated === null) return [{ code: 'density-lost', expectedPpi: expected }];
  const isSame = (axis: 'x' | 'y') => Math.abs(stated[axis] - expected[axis]) <= ROUNDING_PPI;
  return isSame('x') && isSame('y') ? [] : [{ code: 'density', expectedPpi: expected }];
}

function findProfileChange(
  { colour, raster }: StoredPicture,
  { printerProfile }: PrintRecord,
): InspectionChange[] {
  const expected = printerProfile?.name ?? 'sRGB';
  if (colour.kind === 'none') return [{ code: 'profile-lost', expected }];
  const isSame = printerProfile
    ? colour.kind === 'icc' && hash(colour.bytes) === printerProfile.sha256
    : planColour(colour, raster.model).profile.kind === 'srgb';
  return isSame ? [] : [{ code: 'profile', expected }];
}

const hash = (bytes: Uint8Array) => createHash('sha256').update(bytes).digest('hex');
