import type { RectPx } from '../geometry/rectangle.ts';
import type { Shape } from '../geometry/shape.ts';
import type { Intent } from '../icc/profile.ts';

/** sRGB, 0…255 each, alpha 0 (clear) or 1 (opaque). */
export interface Background {
  readonly r: number;
  readonly g: number;
  readonly b: number;
  readonly alpha: 0 | 1;
}

/** One step of a print plan: data only. Steps are carried out in their order, each on the raster of the one before. */
export type Step =
  /** Mend the artwork's pixels; done before it is measured and placed, so that all that follows is of the mended art. */
  | { readonly step: 'mend'; readonly mend: string }
  /** Keep this rectangle of the artwork as displayed. */
  | { readonly step: 'crop'; readonly rectPx: RectPx }
  /** Resample to this size; left out where the size is that already. */
  | { readonly step: 'resize'; readonly widthPx: number; readonly heightPx: number }
  /** Turn clockwise. */
  | { readonly step: 'turn'; readonly degrees: 90 | 180 | 270 }
  /** Bring the colours of the named space to sRGB; what sRGB cannot hold is clipped. */
  | { readonly step: 'convert'; readonly from: string }
  /** Lay on a clear canvas with its top left corner at x, y (may be negative: the overhang is cut). */
  | {
      readonly step: 'pad';
      readonly widthPx: number;
      readonly heightPx: number;
      readonly x: number;
      readonly y: number;
      /** Where else the art is laid, going round a body; left out where it lies once. */
      readonly copiesX?: readonly number[];
    }
  /** Bend the canvas into the flat paper of a tapered body, which is an arc. */
  | {
      readonly step: 'bend';
      readonly outerRadiusMm: number;
      readonly innerRadiusMm: number;
      readonly angleDeg: number;
      readonly opens: 'below' | 'above';
      readonly bleedMm: number;
      readonly ppi: number;
      readonly widthPx: number;
      readonly heightPx: number;
    }
  /** Clear every pixel whose middle lies farther than `bleedMm` outside `edge` (frame: canvas middle = middle of the edge's box). */
  | { readonly step: 'cut'; readonly edge: Shape; readonly bleedMm: number; readonly ppi: number }
  /** Composite over the background: in sRGB, or for a printer in the art's own colours. */
  | { readonly step: 'flatten'; readonly background: Background }
  /** Bring the colours of the whole canvas to those of a printer, in one step from the art's own. */
  | {
      readonly step: 'convert-for-printer';
      readonly profile: string;
      readonly space: 'rgb' | 'cmyk';
      readonly intent: Intent;
      readonly blackPointCompensation: boolean;
    }
  /** Left-right reversal of the whole canvas. */
  | { readonly step: 'mirror' };

/** The whole way from an artwork to its print-ready file, computed without touching a pixel. */
export interface PrintPlan {
  readonly steps: readonly Step[];
  readonly widthPx: number;
  readonly heightPx: number;
  readonly widthMm: number;
  readonly heightMm: number;
  readonly ppi: number;
  readonly mirrored: boolean;
}
