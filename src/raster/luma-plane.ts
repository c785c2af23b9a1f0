import { bandsOverWhite } from './bands-over-white.ts';
import { viewRgbaWords } from './pixel-units.ts';
import { fullScaleOf, type Raster } from './raster.ts';

/**
 * Luma of every pixel over white, 0…255: 0.2126 R + 0.7152 G + 0.0722 B of the coded samples (ITU-R BT.709-6, 3.2), a
 * stand-in for lightness that costs one pass. Gray or rgb.
 */
export function makeLumaPlane(raster: Raster): Uint8Array {
  const plane = new Uint8Array(raster.widthPx * raster.heightPx);
  const words = viewRgbaWords(raster);
  if (words) addWords(words, plane);
  else addBands(raster, plane);
  return plane;
}

/** In 1/65536, so that sums stay whole; the three weights add up to 65536. */
const [RED, GREEN, BLUE] = [13933, 46871, 4732];

function addBands(raster: Raster, plane: Uint8Array): void {
  const scale = fullScaleOf(raster) === 255 ? 1 : 1 / 257;
  for (const { colours, firstPixel, pixels } of bandsOverWhite(raster))
    for (let i = 0; i < pixels; i += 1) {
      const sum = RED * colours[3 * i]! + GREEN * colours[3 * i + 1]! + BLUE * colours[3 * i + 2]!;
      plane[firstPixel + i] = (sum * scale) / 65536 + 0.5;
    }
}

/** The same of 8-bit cut-outs, of which most pixels are opaque or clear: nothing is to be mixed there. */
function addWords(words: Uint32Array, plane: Uint8Array): void {
  for (let i = 0; i < words.length; i += 1) {
    const word = words[i]!;
    const alpha = word >>> 24;
    if (alpha === 0) {
      plane[i] = 255;
      continue;
    }
    let [red, green, blue] = [word & 255, (word >>> 8) & 255, (word >>> 16) & 255];
    if (alpha !== 255) {
      const clear = (255 - alpha) * 255;
      red = ((red * alpha + clear) / 255 + 0.5) | 0;
      green = ((green * alpha + clear) / 255 + 0.5) | 0;
      blue = ((blue * alpha + clear) / 255 + 0.5) | 0;
    }
    plane[i] = (RED * red + GREEN * green + BLUE * blue) / 65536 + 0.5;
  }
}
