import type { Raster } from '../raster/raster.ts';
import type { ArtworkFormat, StatedPpi } from './artwork.ts';
import type { StatedColour } from './container-facts.ts';
import { decodePicture } from './decode-picture.ts';
import type { Limits } from './limits.ts';
import { openPicture } from './open-picture.ts';
import { readContainer } from './read-container.ts';
import { combineStatedPpi } from './stated-ppi.ts';
import { withinSeconds } from './within-seconds.ts';

/** A picture as its file holds it: samples as stored, colours not converted. */
export interface StoredPicture {
  readonly raster: Raster;
  readonly statedPpi: StatedPpi | null;
  /** 1…8 as in EXIF; applied to `raster` and `statedPpi`, as decoders do. */
  readonly orientation: number;
  readonly pages: number;
  readonly colour: StatedColour;
}

/** @throws `damaged`, `unsupported-format`, `too-many-pixels`, `too-slow`; the signal's reason when it was aborted */
export async function readStoredPicture(
  format: Exclude<ArtworkFormat, 'svg'>,
  bytes: Uint8Array,
  limits: Limits,
  signal?: AbortSignal,
): Promise<StoredPicture> {
  const { storedPpi, pages, colour } = readContainer(format, bytes, limits);
  const picture = await withinSeconds(openPicture(format, bytes, limits), limits.maxSeconds, signal);
  const raster = await withinSeconds(decodePicture(picture, limits), limits.maxSeconds, signal);
  const { exif, orientation } = picture;
  return {
    raster,
    statedPpi: combineStatedPpi(format, storedPpi, exif, orientation),
    orientation,
    pages,
    colour,
  };
}
