import type { PrintPicture } from '../checks/define-check.ts';
import type { GamutCensus } from '../checks/gamut-census.ts';
import type { PointPx } from '../geometry/rectangle.ts';
import { channelsOf, fullScaleOf, type Raster } from '../raster/raster.ts';

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

/** Where the picture lies in the print-ready picture: once, or repeated to the right and left of there. */
export interface MarkedPlaces extends PointPx {
  readonly copiesX?: readonly number[];
}

/**
 * Stripes that rise to the right, black and white by turns: seen on any colour, since one of the two differs from it in
 * lightness, whatever hues an eye tells apart. Where repeats overlap, the first that covers at least half of a pixel
 * decides: it lies above the others.
 */
export function markGamut(
  { mask }: Pick<GamutCensus, 'mask'>,
  { raster, pixelMm }: PrintPicture,
  { x: firstX, y: topY, copiesX = [] }: MarkedPlaces,
): GamutMarks {
  const { widthPx, heightPx } = raster;
  const stripePx = Math.max(2, Math.round(STRIPE_MM / pixelMm));
  const covers = coverOf(raster);
  return {
    paintRow(row, y, onPrintPx, dyed) {
      const inPictureY = y + onPrintPx.y - topY;
      if (inPictureY < 0 || inPictureY >= heightPx) return;
      const decided = copiesX.length > 0 ? new Uint8Array(dyed.length) : null;
      for (const placeX of [firstX, ...copiesX]) {
        const shift = onPrintPx.x - placeX;
        const last = Math.min(dyed.length, widthPx - shift);
        for (let x = Math.max(0, -shift); x < last; x += 1) {
          const pixel = inPictureY * widthPx + x + shift;
          if (decided?.[x] === 1) continue;
          if (decided && covers(pixel)) decided[x] = 1;
          if (mask[pixel] === 0 || dyed[x]! < 128) continue;
          const isDark = Math.floor((x + y) / stripePx) % 2 === 0;
          row.fill(isDark ? 0 : 255, 4 * x, 4 * x + 3);
        }
      }
    },
  };
}

function coverOf(raster: Raster): (pixel: number) => boolean {
  if (!raster.hasAlpha) return () => true;
  const samples = channelsOf(raster);
  const half = fullScaleOf(raster) / 2;
  return (pixel) => raster.data[pixel * samples + samples - 1]! >= half;
}
