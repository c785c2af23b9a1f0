import { viewRgbaWords } from './pixel-units.ts';
import { channelsOf, fullScaleOf, type Raster } from './raster.ts';

/** Some rows of a picture as they are printed. Its arrays are used again for the next band. */
export interface ColourBand {
  /** Three samples a pixel, at the picture's own depth and in its own space. */
  readonly colours: Uint8Array | Uint16Array;
  /** 1 where the pixel is visible (alpha > 0), one a pixel. */
  readonly visible: Uint8Array;
  readonly firstPixel: number;
  readonly pixels: number;
}

/** Rows of a band: few enough to stay in the processor's cache, many enough to cost no calls. */
const ROWS = 64;

/**
 * The picture from the top, band by band, composited over white in the samples' own space: paper is white where dye is
 * thin. Gray or rgb, with or without alpha; gray has three equal samples. What alpha hides comes as white.
 */
export function* bandsOverWhite(raster: Raster): Generator<ColourBand> {
  const { widthPx, heightPx, model, hasAlpha, data } = raster;
  if (model === 'cmyk') throw new Error('Expected a gray or rgb raster, received cmyk.');
  const isReady = model === 'rgb' && !hasAlpha;
  const words = viewRgbaWords(raster);
  const most = Math.min(ROWS, heightPx) * widthPx;
  const samples = isReady ? 0 : most * 3;
  const scratch = data instanceof Uint8Array ? new Uint8Array(samples) : new Uint16Array(samples);
  const visible = new Uint8Array(most).fill(1);
  for (let firstPixel = 0; firstPixel < widthPx * heightPx; firstPixel += most) {
    const pixels = Math.min(most, widthPx * heightPx - firstPixel);
    if (isReady) {
      yield {
        colours: data.subarray(firstPixel * 3, (firstPixel + pixels) * 3),
        visible,
        firstPixel,
        pixels,
      };
      continue;
    }
    if (words) compositeWords(words.subarray(firstPixel, firstPixel + pixels), scratch, visible);
    else composite(raster, firstPixel, pixels, scratch, visible);
    yield { colours: scratch, visible, firstPixel, pixels };
  }
}

function composite(
  raster: Raster,
  firstPixel: number,
  pixels: number,
  target: Uint8Array | Uint16Array,
  visible: Uint8Array,
): void {
  const { data, hasAlpha, model } = raster;
  const channels = channelsOf(raster);
  const full = fullScaleOf(raster);
  const green = model === 'rgb' ? 1 : 0;
  const blue = 2 * green;
  let from = firstPixel * channels;
  for (let pixel = 0, to = 0; pixel < pixels; pixel++, from += channels, to += 3) {
    const alpha = hasAlpha ? data[from + channels - 1]! : full;
    visible[pixel] = alpha === 0 ? 0 : 1;
    if (alpha === full) {
      target[to] = data[from]!;
      target[to + 1] = data[from + green]!;
      target[to + 2] = data[from + blue]!;
    } else {
      const clear = (full - alpha) * full;
      target[to] = (data[from]! * alpha + clear) / full + 0.5;
      target[to + 1] = (data[from + green]! * alpha + clear) / full + 0.5;
      target[to + 2] = (data[from + blue]! * alpha + clear) / full + 0.5;
    }
  }
}

/** The same of 8-bit cut-outs, of which most pixels are opaque or clear: nothing is to be mixed there. */
function compositeWords(words: Uint32Array, target: Uint8Array | Uint16Array, visible: Uint8Array): void {
  for (let pixel = 0, to = 0; pixel < words.length; pixel += 1, to += 3) {
    const word = words[pixel]!;
    const alpha = word >>> 24;
    visible[pixel] = alpha === 0 ? 0 : 1;
    if (alpha === 255) {
      target[to] = word & 255;
      target[to + 1] = (word >>> 8) & 255;
      target[to + 2] = (word >>> 16) & 255;
    } else {
      const clear = (255 - alpha) * 255;
      target[to] = ((word & 255) * alpha + clear) / 255 + 0.5;
      target[to + 1] = (((word >>> 8) & 255) * alpha + clear) / 255 + 0.5;
      target[to + 2] = (((word >>> 16) & 255) * alpha + clear) / 255 + 0.5;
    }
  }
}
