import type { Path } from './path.ts';
import type { PointMm, RectMm } from './rectangle.ts';

/** sRGB, 0…255 each. */
export interface InkColour {
  readonly r: number;
  readonly g: number;
  readonly b: number;
}

/** One mark of a drawing. Lines have flat ends, which lie exactly on their points. */
export type DrawnItem =
  | {
      readonly kind: 'line';
      readonly from: PointMm;
      readonly to: PointMm;
      readonly widthMm: number;
      readonly colour: InkColour;
      /** Lengths of dash and gap in turn; a whole line where left out. */
      readonly dashesMm?: readonly number[];
    }
  | { readonly kind: 'rect'; readonly rectMm: RectMm; readonly colour: InkColour }
  | { readonly kind: 'path'; readonly path: Path; readonly colour: InkColour };

/** Vector marks as data, in mm; the origin is the top left of the page or the piece they are laid on. */
export type Drawing = readonly DrawnItem[];
