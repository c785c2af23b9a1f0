import type { PrintPicture } from '../checks/define-check.ts';
import type { GamutCensus } from '../checks/gamut-census.ts';
import type { PointPx } from '../geometry/rectangle.ts';

/** Paints over what is out of gamut. */
export interface GamutMarks {
  /**
   * Over a row of the proof, four samples a pixel: `y` in the proof, whose top left corner lies at `onPrintPx` of the
   * print-ready picture. Only where at least half of a pixel can carry dye.
   */
  paintRow(row: Uint8Array, y: number, onPrintPx: PointPx, dyed: Uint8Array): void;
}

/** Width of one stripe: two of them are seen apart at arm's length and on a screen that shows the whole blank (own choice). */
const STRIPE_MM = 1;

/**
 * Stripes that rise to the right, black and white by turns: seen on any colour, since one of the two differs from it in
 * lightness, whatever hues an eye tells apart. `placePx` is where the picture lies in the print-ready picture.
 */
export function markGamut(
  { mask }: Pick<GamutCensus, 'mask'>,
  { raster: { widthPx, heightPx }, pixelMm }: PrintPicture,
  placePx: PointPx,
): GamutMarks {
  const stripePx = Math.max(2, Math.round(STRIPE_MM / pixelMm));
  return {
    paintRow(row, y, onPrintPx, dyed) {
      const inPictureY = y + onPrintPx.y - placePx.y;
      if (inPictureY < 0 || inPictureY >= heightPx) return;
      const shift = onPrintPx.x - placePx.x;
      const last = Math.min(dyed.length, widthPx - shift);
      for (let x = Math.max(0, -shift); x < last; x += 1) {
        if (mask[inPictureY * widthPx + x + shift] === 0 || dyed[x]! < 128) continue;
        const isDark = Math.floor((x + y) / stripePx) % 2 === 0;
        row.fill(isDark ? 0 : 255, 4 * x, 4 * x + 3);
      }
    },
  };
}
