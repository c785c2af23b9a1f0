import { BlankcheckError } from '../blankcheck-error.ts';
import type { ArtworkFormat, StatedPpi } from './artwork.ts';

/** What a file's container says, read without decoding a pixel. */
export interface ContainerFacts {
  /** Pages or frames that show a picture of their own. */
  readonly pages: number;
  /** The container's own density, in the axes of the stored pixels; null when it states none. EXIF is not asked. */
  readonly storedPpi: StatedPpi | null;
  readonly colour: StatedColour;
}

/** What the container says about its colours, before any profile is read. */
export type StatedColour =
  | { readonly kind: 'none' }
  | { readonly kind: 'srgb' }
  | { readonly kind: 'icc'; readonly bytes: Uint8Array }
  | { readonly kind: 'unusable'; readonly reason: string };

/** A limit that a container reader keeps while it unpacks. */
export interface ContainerLimits {
  readonly maxProfileBytes: number;
}

/** 'damaged' with what is wrong in a file of this format and how to mend it. */
export function damagedFile(format: ArtworkFormat, what: string, options?: ErrorOptions): BlankcheckError {
  return new BlankcheckError(
    'damaged',
    `The ${FORMAT_NAMES[format]} is damaged: ${what}. Export or download it again.`,
    options,
  );
}

export const FORMAT_NAMES: Readonly<Record<ArtworkFormat, string>> = {
  png: 'PNG',
  jpeg: 'JPEG',
  webp: 'WebP',
  tiff: 'TIFF',
  avif: 'AVIF',
  gif: 'GIF',
  svg: 'SVG',
};
