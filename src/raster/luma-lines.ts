import { LUMA_BLUE, LUMA_GREEN, LUMA_RED } from '../colour/luma.ts';
import { evenPlaces } from './even-places.ts';
import { channelsOf, fullScaleOf, type Raster } from './raster.ts';

/** Some rows (`x`: along them) or columns (`y`) of a picture, evenly spread, as they were coded. */
export interface LumaLines {
  readonly length: number;
  /** Luma of each line as coded, or green alone, in steps of 8 bits, 0…255; NaN where the art is not opaque. */
  readonly values: readonly Float32Array[];
  /** 1 where no sample that was read is the least or the greatest there is: overshoot may have been cut off there. */
  readonly whole: readonly Uint8Array[];
}

/**
 * At most `most` rows or columns at equal distances, of a gray or rgb raster. Sums of samples as they are coded, with the
 * weights of ITU-R BT.709-6, 3.2: what enlarging does to samples it does to these, which it would not to L*. `green` alone
 * is whole in many a picture of one strong colour, whose red or blue is nothing or all there is over half of it.
 */
export function readLumaLines(
  raster: Raster,
  along: 'x' | 'y',
  most: number,
  of: 'luma' | 'green' = 'luma',
): LumaLines {
  const { widthPx, heightPx, model } = raster;
  if (model === 'cmyk') throw new Error('Expected a gray or rgb raster, received cmyk.');
  const [length, across] = along === 'x' ? [widthPx, heightPx] : [heightPx, widthPx];
  const count = Math.min(most, across);
  const places = evenPlaces(across, count);
  const values: Float32Array[] = [];
  const whole: Uint8Array[] = [];
  for (let line = 0; line < count; line += 1) {
    values.push(new Float32Array(length));
    whole.push(new Uint8Array(length));
  }
  const channels = channelsFor(raster, of);
  // Columns together, row by row: one after the other they would fetch the whole picture from memory each time.
  if (along === 'x')
    for (let line = 0; line < count; line += 1)
      for (let i = 0; i < length; i += 1)
        readPixel(channels, places[line]! * widthPx + i, values[line]!, whole[line]!, i);
  else
    for (let i = 0; i < length; i += 1)
      for (let line = 0; line < count; line += 1)
        readPixel(channels, i * widthPx + places[line]!, values[line]!, whole[line]!, i);
  return { length, values, whole };
}

/** Where the channels lie that are summed up. */
interface Channels {
  readonly data: Raster['data'];
  readonly step: number;
  readonly hasAlpha: boolean;
  readonly full: number;
  readonly red: number;
  readonly green: number;
  readonly blue: number;
}

function channelsFor(raster: Raster, of: 'luma' | 'green'): Channels {
  const { data, hasAlpha, model } = raster;
  const green = model === 'rgb' ? 1 : 0;
  const [red, blue] = of === 'green' ? [green, green] : [0, 2 * green];
  return { data, step: channelsOf(raster), hasAlpha, full: fullScaleOf(raster), red, green, blue };
}

/** Reads one pixel into a place of a line. */
function readPixel(
  { data, step, hasAlpha, full, red, green, blue }: Channels,
  pixel: number,
  values: Float32Array,
  whole: Uint8Array,
  i: number,
): void {
  const from = pixel * step;
  if (hasAlpha && data[from + step - 1] !== full) {
    values[i] = Number.NaN;
    return;
  }
  const r = data[from + red]!;
  const g = data[from + green]!;
  const b = data[from + blue]!;
  values[i] = ((LUMA_RED * r + LUMA_GREEN * g + LUMA_BLUE * b) * 255) / full;
  whole[i] = Math.min(r, g, b) > 0 && Math.max(r, g, b) < full ? 1 : 0;
}
