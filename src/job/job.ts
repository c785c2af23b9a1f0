import type { InkColour } from '../geometry/drawing.ts';
import type { PointMm, RectMm, RectPx } from '../geometry/rectangle.ts';
import type { Shape } from '../geometry/shape.ts';
import type { WrapInHand } from './wrap-in-hand.ts';

export type Surface = 'first' | 'second';
export type Turn = 0 | 90 | 180 | 270;

/** A limit and the record or option it came from (`blank:…`, `family:…`, `option:--bleed`). */
export interface Limit {
  readonly value: number;
  readonly from: string;
}

export interface Hole {
  readonly use: string;
  readonly shape: Shape;
}

/** The one blank that will be pressed: catalogue record, measured size and options resolved. mm, origin top left of the outline box. */
export interface BlankInHand {
  readonly id: string;
  readonly name: string;
  /** The size in the record where another one was measured. */
  readonly nominalMm: { readonly width: number; readonly height: number } | null;
  readonly outline: Shape;
  /** Boundary of the printable area; the outline where the record gives no smaller one. */
  readonly edge: Shape;
  readonly holes: readonly Hole[];
  /** The round body and its flat paper; null for flat blanks. */
  readonly wrap: WrapInHand | null;
  readonly surface: Surface;
  readonly bleed: Limit;
  readonly safe: Limit;
  /** How far in from the outline the face falls away; null where it is not known to. */
  readonly bevel: Limit | null;
  /** On a whole wrap the seam sides have no safe inset. */
  readonly safeSides: 'all' | 'top-and-bottom';
  readonly resolution: { readonly good: Limit; readonly acceptable: Limit; readonly stopBelow: Limit };
  /** Thinnest stroke that survives, dark on light and light on dark; null where nobody knows. */
  readonly smallestStroke: { readonly positive: Limit; readonly reversed: Limit } | null;
  /** How far away it is looked at from, as its family is. */
  readonly viewDistanceMm: number;
  /** True where pure white in the art prints nothing. */
  readonly whiteBase: boolean;
  /** The bare face. */
  readonly baseColour: InkColour;
  /** Pixels per inch of the print-ready file. */
  readonly ppi: number;
}

/** What is to be printed: an artwork on a blank at a size, before any pixel is changed. */
export interface Job {
  readonly blank: BlankInHand;
  readonly contentBoxPx: RectPx;
  readonly turn: Turn;
  readonly fit: 'inside' | 'cover' | 'size';
  readonly offsetMm: PointMm;
  /** Content box on the blank, after the turn; origin top left of the outline box, seen from the front; not clipped. */
  readonly placementMm: RectMm;
  /** How far to the right of it (to the left, where negative) the art is repeated; empty on flat blanks. */
  readonly copiesMm: readonly number[];
  /** Middles of the faces that it is looked at from, along the strip of a round body; empty for art that goes round, and on flat blanks. */
  readonly facesMm: readonly number[];
  /** Artwork pixels per printed inch in the axes of the blank. */
  readonly effectivePpi: { readonly x: number; readonly y: number };
  /** The driver mirrors whatever it is given, which is counted here. */
  readonly driverMirrors: boolean;
  /** Pixels per inch of the print-ready file. */
  readonly ppi: number;
}
