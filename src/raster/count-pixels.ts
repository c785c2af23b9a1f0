import { viewRgbaWords } from './pixel-units.ts';
import { channelsOf, fullScaleOf, type Raster } from './raster.ts';

/** Running counts over visible pixels; see Survey for what each means. */
export interface PixelCounts {
  readonly alphaHistogram: Uint32Array;
  readonly census: Uint32Array;
  visiblePixels: number;
  pureWhitePixels: number;
}

/** Counts the visible pixels from index `start` to before `end` (pixel index, rows run on). */
export type RowCounter = (counts: PixelCounts, start: number, end: number) => void;

export function createPixelCounts(): PixelCounts {
  return {
    alphaHistogram: new Uint32Array(256),
    census: new Uint32Array(32768),
    visiblePixels: 0,
    pureWhitePixels: 0,
  };
}

/** The fastest counter for this raster's samples. All of them count the same. */
export function rowCounterFor(raster: Raster): RowCounter {
  const words = viewRgbaWords(raster);
  return words ? countRgbaWords(words) : countSamples(raster);
}

/** One read per pixel, and one update per run of equal pixels: flat art has long runs. */
function countRgbaWords(words: Uint32Array): RowCounter {
  return (counts, start, end) => {
    const { alphaHistogram, census } = counts;
    let visible = 0;
    let white = 0;
    let i = start;
    while (i < end) {
      const word = words[i]!;
      const from = i;
      do i += 1;
      while (i < end && words[i] === word);
      const alpha = word >>> 24;
      if (alpha === 0) continue;
      const run = i - from;
      alphaHistogram[alpha]! += run;
      census[((word & 0xf8) << 7) | ((word >>> 6) & 0x3e0) | ((word >>> 19) & 0x1f)]! += run;
      visible += run;
      if ((word & 0xffffff) === 0xffffff) white += run;
    }
    counts.visiblePixels += visible;
    counts.pureWhitePixels += white;
  };
}

function countSamples(raster: Raster): RowCounter {
  const { data, hasAlpha, depth } = raster;
  const step = channelsOf(raster);
  const green = raster.model === 'gray' ? 0 : 1;
  const blue = raster.model === 'gray' ? 0 : 2;
  const fullScale = fullScaleOf(raster);
  const toFive = depth - 5;
  const toEight = depth - 8;
  return (counts, start, end) => {
    const { alphaHistogram, census } = counts;
    for (let i = start * step; i < end * step; i += step) {
      if (hasAlpha) {
        const alpha = data[i + step - 1]!;
        if (alpha === 0) continue;
        alphaHistogram[Math.max(1, alpha >>> toEight)]! += 1;
      }
      const r = data[i]!;
      const g = data[i + green]!;
      const b = data[i + blue]!;
      census[((r >>> toFive) << 10) | ((g >>> toFive) << 5) | (b >>> toFive)]! += 1;
      counts.visiblePixels += 1;
      if (r === fullScale && g === fullScale && b === fullScale) counts.pureWhitePixels += 1;
    }
  };
}
