import type { PixelTransform } from '../icc/pixel-transform.ts';
import type { IccProfile } from '../icc/profile.ts';
import type { Raster } from '../raster/raster.ts';
import type { PrintRecord } from './print-record.ts';

export type ArtworkFormat = 'png' | 'jpeg' | 'webp' | 'tiff' | 'avif' | 'gif' | 'svg';

/** Pixels per inch as the file states them, per axis of the artwork as displayed. */
export interface StatedPpi {
  readonly x: number;
  readonly y: number;
}

/** What the file says about its colours. `converted` tells what was done to reach the raster that is judged. */
export type ArtworkProfile =
  | { readonly kind: 'none'; readonly model: 'gray' | 'rgb' }
  | { readonly kind: 'srgb'; readonly name: string }
  | { readonly kind: 'rgb' | 'gray' | 'table'; readonly name: string }
  /** The profile of a printer: the art was converted for it once already. */
  | { readonly kind: 'printer'; readonly name: string; readonly sha256: string }
  /** Without a profile both are null. */
  | { readonly kind: 'cmyk'; readonly name: string | null; readonly sha256: string | null }
  | { readonly kind: 'unusable'; readonly reason: string };

/** What a drawing holds besides its own paths. */
export interface VectorFacts {
  /** Live text depends on the fonts of the machine that draws it. */
  readonly textElements: number;
  /** References to anything outside the file; never loaded. */
  readonly outsideReferences: readonly string[];
  /** Pictures inside the drawing, with their place in pixels of the artwork as displayed. */
  readonly pictures: readonly {
    readonly widthPx: number;
    readonly heightPx: number;
    readonly shownWidthPx: number;
    readonly shownHeightPx: number;
  }[];
  /** Pictures whose shown size cannot be told: in patterns and masks, or unreadable. */
  readonly unplacedPictures: number;
}

/**
 * The colours of an artwork that are not sRGB: wider than sRGB, so that they are judged before anything is clipped.
 */
export interface OwnColours {
  /** Of the space that the file is in. */
  readonly name: string;
  /** Of the raster's samples: that space, or `WIDE_PROFILE` where its samples do not serve as a working picture. */
  readonly profile: IccProfile;
  /** Hex SHA-256 of the bytes of a printer's profile whose samples the raster still has. */
  readonly sha256?: string;
  readonly toSrgb: PixelTransform;
}

/** An artwork, fully decoded, orientation applied, with what its file says of itself. */
export interface Artwork {
  readonly format: ArtworkFormat;
  /** Hex SHA-256 of the bytes as given. */
  readonly sha256: string;
  /** As displayed: EXIF, TIFF or PNG orientation is applied. */
  readonly raster: Raster;
  /** Mends carried out on the raster, in their order; left out where none was asked for. */
  readonly mends?: readonly string[];
  /** null where the raster is sRGB (gray: with the sRGB curve) already. */
  readonly ownColours: OwnColours | null;
  /** null when the file says nothing, or nothing that is a length. */
  readonly statedPpi: StatedPpi | null;
  /** 1…8 as in EXIF (CIPA DC-008, tag 0x0112); 1 when the file says nothing. Already applied to the raster. */
  readonly orientation: number;
  /** Pages or frames in the file; only the first was read. */
  readonly pages: number;
  readonly profile: ArtworkProfile;
  /** What this program wrote into the file, when it is a print-ready file of its own. */
  readonly printRecord: PrintRecord | null;
  /** Given for drawings, which are drawn anew at the print resolution. */
  readonly vector: VectorFacts | null;
}
