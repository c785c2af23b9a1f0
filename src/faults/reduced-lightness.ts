import type { RectPx } from '../geometry/rectangle.ts';
import { channelsOf, fullScaleOf, type Raster } from '../raster/raster.ts';

/** Rows of numbers from the top. */
export interface GrayField {
  readonly width: number;
  readonly height: number;
  readonly values: Float64Array;
}

/** Samples looked at in each reduced pixel and direction, at most: sixteen of a block are its mean within its own grain. */
const SAMPLES = 4;

/**
 * Luma of the art in a box as it prints over white, 0…255 at any depth, reduced by a whole number until its longer side
 * is at most `sidePx`; `factor` is that number. Weights of luma: ITU-R BT.709. Gray or rgb.
 */
export function reduceLightness(
  raster: Raster,
  box: RectPx,
  sidePx: number,
): GrayField & { readonly factor: number } {
  const factor = Math.max(1, Math.ceil(Math.max(box.width, box.height) / sidePx));
  const width = Math.max(1, Math.floor(box.width / factor));
  const height = Math.max(1, Math.floor(box.height / factor));
  const channels = channelsOf(raster);
  const full = fullScaleOf(raster);
  const [green, blue] = raster.model === 'gray' ? [0, 0] : [1, 2];
  const step = Math.max(1, Math.floor(factor / SAMPLES));
  const values = new Float64Array(width * height);
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      let sum = 0;
      let count = 0;
      for (let dy = 0; dy < factor && y * factor + dy < box.height; dy += step)
        for (let dx = 0; dx < factor && x * factor + dx < box.width; dx += step) {
          const pixel = (box.y + y * factor + dy) * raster.widthPx + box.x + x * factor + dx;
          const at = pixel * channels;
          const { data } = raster;
          const luma = 0.2126 * data[at]! + 0.7152 * data[at + green]! + 0.0722 * data[at + blue]!;
          const alpha = raster.hasAlpha ? data[at + channels - 1]! / full : 1;
          sum += luma * alpha + full * (1 - alpha);
          count += 1;
        }
      values[y * width + x] = (sum / count) * (255 / full);
    }
  return { width, height, values, factor };
}

/** A field less its mean over squares of 2 `reach` + 1: what is finer than that. Squares end at the rim. */
export function takeFineDetail({ width, height, values }: GrayField, reach: number): GrayField {
  const sums = new Float64Array((width + 1) * (height + 1));
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++)
      sums[(y + 1) * (width + 1) + x + 1] =
        values[y * width + x]! +
        sums[y * (width + 1) + x + 1]! +
        sums[(y + 1) * (width + 1) + x]! -
        sums[y * (width + 1) + x]!;
  const fine = new Float64Array(values.length);
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      const [left, right] = [Math.max(0, x - reach), Math.min(width, x + reach + 1)];
      const [top, bottom] = [Math.max(0, y - reach), Math.min(height, y + reach + 1)];
      const at = (row: number, column: number) => sums[row * (width + 1) + column]!;
      const sum = at(bottom, right) - at(top, right) - at(bottom, left) + at(top, left);
      fine[y * width + x] = values[y * width + x]! - sum / ((right - left) * (bottom - top));
    }
  return { width, height, values: fine };
}
