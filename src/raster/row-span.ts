import { viewRgbaWords } from './pixel-units.ts';
import { channelsOf, fullScaleOf, type Raster } from './raster.ts';

/** First and last pixel of a row, from its left. */
export interface RowSpan {
  first: number;
  last: number;
}

/** How the pixels of a raster lie, looked up once for all its rows. */
export interface RowPixels {
  /** The pixels in one piece each, where they are: they are looked at faster, and say the same. */
  readonly words: Uint32Array | null;
  readonly data: Raster['data'];
  readonly step: number;
  readonly hasAlpha: boolean;
  readonly full: number;
}

export function rowPixelsOf(raster: Raster): RowPixels {
  return {
    words: viewRgbaWords(raster),
    data: raster.data,
    step: channelsOf(raster),
    hasAlpha: raster.hasAlpha,
    full: fullScaleOf(raster),
  };
}

/**
 * Narrows a span of the row that starts at pixel index `row` to its outermost pixels of at least this alpha, which the
 * raster must have; false, and the span used up, where there are none.
 */
export function narrowToAlpha(pixels: RowPixels, row: number, span: RowSpan, leastAlpha: number): boolean {
  const { words, data, step } = pixels;
  // Alpha is the highest byte of a word, so it can be compared in place.
  return words
    ? narrow(words, row, 1, 0, leastAlpha * 0x1000000, span)
    : narrow(data, row * step, step, step - 1, leastAlpha, span);
}

function narrow(
  units: Uint8Array | Uint16Array | Uint32Array,
  row: number,
  step: number,
  offset: number,
  least: number,
  span: RowSpan,
): boolean {
  let first = row + span.first * step + offset;
  let last = row + span.last * step + offset;
  while (first <= last && units[first]! < least) first += step;
  span.first = (first - offset - row) / step;
  if (first > last) return false;
  while (units[last]! < least) last -= step;
  span.last = (last - offset - row) / step;
  return true;
}

/** Narrows a span of the row to its outermost visible pixels that are not pure white; false where there are none. */
export function narrowToInk(pixels: RowPixels, row: number, span: RowSpan): boolean {
  while (span.first <= span.last && !hasInk(pixels, row + span.first)) span.first += 1;
  if (span.first > span.last) return false;
  while (!hasInk(pixels, row + span.last)) span.last -= 1;
  return true;
}

function hasInk({ words, data, step, hasAlpha, full }: RowPixels, pixel: number): boolean {
  if (words) return (words[pixel]! & 0xffffff) !== 0xffffff && words[pixel]! > 0xffffff;
  const at = pixel * step;
  const colours = hasAlpha ? step - 1 : step;
  if (hasAlpha && data[at + colours] === 0) return false;
  for (let i = 0; i < colours; i += 1) if (data[at + i] !== full) return true;
  return false;
}
