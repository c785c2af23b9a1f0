import { createHash } from 'node:crypto';
import { BlankcheckError } from '../blankcheck-error.ts';
import type { Raster } from '../raster/raster.ts';
import type { ArtworkFormat, StatedPpi } from './artwork.ts';
import type { StatedColour } from './container-facts.ts';
import { decodePicture } from './decode-picture.ts';
import { type Limits, limitsWith } from './limits.ts';
import { openPicture } from './open-picture.ts';
import { type PrintRecord, readPrintRecord } from './print-record.ts';
import { readContainer } from './read-container.ts';
import { requireFormat } from './sniff.ts';
import { combineStatedPpi } from './stated-ppi.ts';
import { withinSeconds } from './within-seconds.ts';

/** A picture as its file stores it: no colour is converted. */
export interface StoredPicture {
  readonly format: Exclude<ArtworkFormat, 'svg'>;
  /** Hex SHA-256 of the file. */
  readonly sha256: string;
  readonly raster: Raster;
  readonly statedPpi: StatedPpi | null;
  /** 1…8, applied to the raster; 1 when the file says nothing. */
  readonly orientation: number;
  readonly colour: StatedColour;
  readonly record: PrintRecord | null;
}

/** @throws as readArtwork; `unsupported-format` for a drawing, which has no samples. */
export async function readStoredPicture(
  bytes: Uint8Array,
  options: { readonly limits?: Partial<Limits>; readonly signal?: AbortSignal } = {},
): Promise<StoredPicture> {
  const limits = limitsWith(options.limits);
  const format = requireFormat(bytes);
  if (format === 'svg')
    throw new BlankcheckError(
      'unsupported-format',
      'This is SVG, a drawing: print-ready files are PNG, TIFF or PDF.',
    );
  const { storedPpi, colour } = readContainer(format, bytes, limits);
  const picture = await withinSeconds(openPicture(format, bytes, limits), limits.maxSeconds, options.signal);
  const raster = await withinSeconds(decodePicture(picture, limits), limits.maxSeconds, options.signal);
  options.signal?.throwIfAborted();
  const { orientation, exif } = picture;
  return {
    format,
    sha256: createHash('sha256').update(bytes).digest('hex'),
    raster,
    statedPpi: combineStatedPpi(format, storedPpi, exif, orientation),
    orientation,
    colour,
    record: readPrintRecord(bytes),
  };
}
