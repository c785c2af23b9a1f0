import type { InkColour } from '../../geometry/drawing.ts';
import type { RectMm } from '../../geometry/rectangle.ts';
import type { BlankLines } from '../../job/blank-lines.ts';

/** A small picture as a file, and where it lies. */
export interface ViewedPicture {
  readonly mediaType: 'image/webp' | 'image/png';
  readonly bytes: Uint8Array;
  /** From the top left of the blank's outline box, seen from the front. */
  readonly boxMm: RectMm;
}

/** What a page shows of one artwork on its blank: small pictures and lines, as data. On a round body all of it is the strip. */
export interface PieceView {
  readonly lines: BlankLines;
  readonly baseColour: InkColour;
  /** The art where it is printed, in the colours of the file; null where nothing is visible or nothing could be read. */
  readonly art: ViewedPicture | null;
  /** How the pressed blank will look; of a round body, where it is not `onBlank`, its four sides and its flat paper. */
  readonly proof: (ViewedPicture & { readonly onBlank: boolean }) | null;
  /** White where the printer cannot make the colour, grays where it cannot in part; null where none is marked. */
  readonly outOfGamut: ViewedPicture | null;
  /** The same for what is very dark or merges in the printed black. */
  readonly dark: ViewedPicture | null;
}
