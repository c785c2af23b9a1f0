import type { RectPx } from '../geometry/rectangle.ts';
import type { Raster } from './raster.ts';
import { lightnessSource, readLightness } from './read-lightness.ts';

/** Some rows (`x`: along them) or columns (`y`) of a picture, evenly spread over a box of whole pixels. */
export interface LightnessLines {
  readonly along: 'x' | 'y';
  readonly boxPx: RectPx;
  /** Pixels of a line. */
  readonly length: number;
  /** L* of each line over white, 0…100. */
  readonly values: readonly Float32Array[];
  /** Where each lies across, pixels from the top or left of the box. */
  readonly at: readonly number[];
}

/**
 * At most `most` rows or columns of the box, at equal distances. Lines of a gray or rgb raster composited over white in
 * its own space, by the luma of ITU-R BT.709-6, 3.2.
 */
export function readLightnessLines(
  raster: Raster,
  boxPx: RectPx,
  along: 'x' | 'y',
  most: number,
): LightnessLines {
  const length = along === 'x' ? boxPx.width : boxPx.height;
  const across = along === 'x' ? boxPx.height : boxPx.width;
  const count = Math.min(most, across);
  const at = Array.from({ length: count }, (_, i) => Math.floor(((i + 0.5) * across) / count));
  const values = new Float32Array(count * length);
  // Columns too are read row by row: down a column every pixel would be fetched from another place of the memory.
  const offsets = along === 'x' ? Int32Array.from({ length }, (_, x) => x) : Int32Array.from(at);
  const rows = along === 'x' ? at : Array.from({ length }, (_, y) => y);
  const source = lightnessSource(raster);
  const [between, step] = along === 'x' ? [length, 1] : [1, length];
  for (const [i, y] of rows.entries())
    readLightness(source, (boxPx.y + y) * raster.widthPx + boxPx.x, offsets, {
      values,
      from: i * between,
      step,
    });
  return {
    along,
    boxPx,
    length,
    at,
    values: at.map((_, i) => values.subarray(i * length, (i + 1) * length)),
  };
}
