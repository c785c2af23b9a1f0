import type { PointPx, RectPx } from '../geometry/rectangle.ts';

/**
 * Where the art of a picture lies, found from its rims inward. Everything is in pixels of the artwork as displayed.
 * Visible means alpha > 0 at the picture's own depth; a picture without alpha is all visible.
 */
export interface Extents {
  readonly widthPx: number;
  readonly heightPx: number;
  /** Smallest box of the visible pixels; null when there are none. */
  readonly contentBoxPx: RectPx | null;
  /** The same at alpha of at least 2, 10 and 50 %. */
  readonly boxAtAlphaPx: {
    readonly percent2: RectPx | null;
    readonly percent10: RectPx | null;
    readonly percent50: RectPx | null;
  };
  /** Box of the visible pixels that are not pure white: on a white base only they put dye down. null for none. */
  readonly inkBoxPx: RectPx | null;
  /** Convex hull of the visible pixels' squares, clockwise as seen on the screen; empty when nothing is visible. */
  readonly hullPx: readonly PointPx[];
  /** First and last visible pixel of each row, row by row; last < first in rows without any. */
  readonly rowSpansPx: Int32Array;
}

/** The extents, and what one pass over the pixels within them counted. */
export interface Survey extends Extents {
  readonly visiblePixels: number;
  /** 256 bins; 16-bit alpha is binned by its upper byte, and visible pixels are never counted in bin 0. */
  readonly alphaHistogram: Uint32Array;
  /** Visible pixels by colour, 5 bits a channel: 32768 bins, index r << 10 | g << 5 | b. Gray art has r = g = b. */
  readonly census: Uint32Array;
  /** Visible pixels that are pure white at the picture's own depth: on a white base they print nothing. */
  readonly pureWhitePixels: number;
  /** Visible pixels on each border row or column of the canvas. */
  readonly borderPixels: {
    readonly top: number;
    readonly right: number;
    readonly bottom: number;
    readonly left: number;
  };
}
