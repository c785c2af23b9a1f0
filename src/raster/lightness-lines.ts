import type { RectPx } from '../geometry/rectangle.ts';
import { evenPlaces } from './even-places.ts';
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
  readonly at: ArrayLike<number>;
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
  const at = evenPlaces(across, count);
  const values = new Float32Array(count * length);
  // Columns too are read row by row: down a column every pixel would be fetched from another place of the memory.
  // Of a whole side every pixel: as many places as there are.
  const offsets = along === 'x' ? evenPlaces(length, length) : at;
  const rows = along === 'x' ? at : evenPlaces(length, length);
  const source = lightnessSource(raster);
  const [between, step] = along === 'x' ? [length, 1] : [1, length];
  for (let i = 0; i < rows.length; i += 1)
    readLightness(source, (boxPx.y + rows[i]!) * raster.widthPx + boxPx.x, offsets, {
      values,
      from: i * between,
      step,
    });
  const lines: Float32Array[] = [];
  for (let i = 0; i < count; i += 1) lines.push(values.subarray(i * length, (i + 1) * length));
  return { along, boxPx, length, at, values: lines };
}
