import { channelsOf, fullScaleOf, type Raster } from './raster.ts';

/** Some rows (`x`: along them) or columns (`y`) of a picture, evenly spread, as they were coded. */
export interface LumaLines {
  readonly length: number;
  /** Luma of each line as coded, in steps of 8 bits, 0…255; NaN where the art is not opaque. */
  readonly values: readonly Float32Array[];
  /** 1 where no sample of a pixel is the least or the greatest there is: overshoot may have been cut off there. */
  readonly whole: readonly Uint8Array[];
}

/**
 * At most `most` rows or columns at equal distances, of a gray or rgb raster. Sums of samples as they are coded, with the
 * weights of ITU-R BT.709-6, 3.2: what enlarging does to samples it does to these, which it would not to L*.
 */
export function readLumaLines(raster: Raster, along: 'x' | 'y', most: number): LumaLines {
  const { widthPx, heightPx, model } = raster;
  if (model === 'cmyk') throw new Error('Expected a gray or rgb raster, received cmyk.');
  const [length, across] = along === 'x' ? [widthPx, heightPx] : [heightPx, widthPx];
  const count = Math.min(most, across);
  const lines = Array.from({ length: count }, (_, i) =>
    readLine(raster, along, Math.floor(((i + 0.5) * across) / count), length),
  );
  return { length, values: lines.map(({ values }) => values), whole: lines.map(({ whole }) => whole) };
}

function readLine(raster: Raster, along: 'x' | 'y', line: number, length: number) {
  const { widthPx, hasAlpha, model, data } = raster;
  const channels = channelsOf(raster);
  const full = fullScaleOf(raster);
  const [green, blue] = model === 'rgb' ? [1, 2] : [0, 0];
  const step = (along === 'x' ? 1 : widthPx) * channels;
  let from = (along === 'x' ? line * widthPx : line) * channels;
  const values = new Float32Array(length);
  const whole = new Uint8Array(length);
  for (let i = 0; i < length; i += 1, from += step) {
    const isOpaque = !hasAlpha || data[from + channels - 1] === full;
    const [r, g, b] = [data[from]!, data[from + green]!, data[from + blue]!];
    values[i] = isOpaque ? ((0.2126 * r + 0.7152 * g + 0.0722 * b) * 255) / full : Number.NaN;
    whole[i] = isOpaque && Math.min(r, g, b) > 0 && Math.max(r, g, b) < full ? 1 : 0;
  }
  return { values, whole };
}
