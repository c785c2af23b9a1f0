import { makeArtTest } from './art-test.ts';
import { viewRgbaWords } from './pixel-units.ts';
import { channelsOf, type Raster } from './raster.ts';

/** First and last pixel of a row, from its left. */
export interface RowSpan {
  first: number;
  last: number;
}

/**
 * Narrows a span of the row that starts at pixel index `row` to its outermost pixels of at least this alpha;
 * false, and the span used up, where there are none.
 */
export type SpanFinder = (row: number, span: RowSpan, leastAlpha: number) => boolean;

/** Narrows a span of the row to its outermost visible pixels that are not pure white; false where there are none. */
export type InkFinder = (row: number, span: RowSpan) => boolean;

/** The fastest ink finder for this raster, with alpha or without. */
export function inkFinderFor(raster: Raster): InkFinder {
  const words = viewRgbaWords(raster);
  const isArt = makeArtTest(raster, { from: 'visible', whiteIsNoArt: true });
  const { widthPx } = raster;
  const hasInk = words
    ? (at: number) => (words[at]! & 0xffffff) !== 0xffffff && words[at]! > 0xffffff
    : (at: number) => isArt(at % widthPx, Math.floor(at / widthPx));
  return (row, span) => {
    while (span.first <= span.last && !hasInk(row + span.first)) span.first += 1;
    if (span.first > span.last) return false;
    while (!hasInk(row + span.last)) span.last -= 1;
    return true;
  };
}

/** The fastest finder for this raster, which must have alpha. All of them find the same. */
export function spanFinderFor(raster: Raster): SpanFinder {
  const words = viewRgbaWords(raster);
  return words ? findInWords(words) : findInSamples(raster);
}

function findInWords(words: Uint32Array): SpanFinder {
  return (row, span, leastAlpha) => {
    // Alpha is the highest byte, so it can be compared in place.
    const least = leastAlpha * 0x1000000;
    let first = row + span.first;
    let last = row + span.last;
    while (first <= last && words[first]! < least) first += 1;
    span.first = first - row;
    if (first > last) return false;
    while (words[last]! < least) last -= 1;
    span.last = last - row;
    return true;
  };
}

function findInSamples(raster: Raster): SpanFinder {
  const { data } = raster;
  const step = channelsOf(raster);
  return (row, span, leastAlpha) => {
    const alpha = row * step + step - 1;
    while (span.first <= span.last && data[alpha + span.first * step]! < leastAlpha) span.first += 1;
    if (span.first > span.last) return false;
    while (data[alpha + span.last * step]! < leastAlpha) span.last -= 1;
    return true;
  };
}
