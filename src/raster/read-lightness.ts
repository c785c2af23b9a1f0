import { labRoot } from '../colour/lab.ts';
import { LUMA_BLUE, LUMA_GREEN, LUMA_RED } from '../colour/luma.ts';
import { decodeSrgb } from '../colour/srgb.ts';
import { viewRgbaWords } from './pixel-units.ts';
import { channelsOf, fullScaleOf, type Raster } from './raster.ts';

/** Steps of a code of 255 in the table: what 16 bits tell beyond that is far below a step that is seen. */
const FINE = 4;
let table: Float32Array | null = null;

/** L* of luma of 0…255 x FINE by the sRGB curve (IEC 61966-2-1) and CIE 15; the luma stands in for the luminance. */
function lightnessTable(): Float32Array {
  table ??= Float32Array.from(
    { length: 255 * FINE + 2 },
    (_, i) => 116 * labRoot(decodeSrgb(Math.min(1, i / (255 * FINE)))) - 16,
  );
  return table;
}

/** Where what is read goes: the i-th to `from + i * step`. */
export interface Target {
  readonly values: Float32Array;
  readonly from: number;
  readonly step: number;
}

/** How the pixels of a raster lie, looked up once for all that is read of it. */
export interface LightnessSource {
  /** The pixels in one piece each, where they are. */
  readonly words: Uint32Array | null;
  readonly data: Raster['data'];
  readonly hasAlpha: boolean;
  readonly channels: number;
  /** Where green lies after red, and as far again blue. */
  readonly green: 0 | 1;
  readonly full: number;
  readonly lightness: Float32Array;
}

/** Gray or rgb. */
export function lightnessSource(raster: Raster): LightnessSource {
  const { model, data, hasAlpha } = raster;
  if (model === 'cmyk') throw new Error('Expected a gray or rgb raster, received cmyk.');
  return {
    words: viewRgbaWords(raster),
    data,
    hasAlpha,
    channels: channelsOf(raster),
    green: model === 'rgb' ? 1 : 0,
    full: fullScaleOf(raster),
    lightness: lightnessTable(),
  };
}

/**
 * Reads the pixels `first + offsets[i]`, counted in rows from the top left: L* over white in the raster's own space, by
 * the luma of ITU-R BT.709-6, 3.2. Words are read faster, and to the same.
 */
export function readLightness(
  source: LightnessSource,
  first: number,
  offsets: Int32Array,
  target: Target,
): void {
  if (source.words) readWords(source.words, source.lightness, first, offsets, target);
  else readSamples(source, first, offsets, target);
}

function readWords(
  words: Uint32Array,
  lightness: Float32Array,
  first: number,
  offsets: Int32Array,
  { values, from, step }: Target,
): void {
  for (let i = 0, to = from; i < offsets.length; i += 1, to += step) {
    const word = words[first + offsets[i]!]!;
    const alpha = word >>> 24;
    let luma =
      LUMA_RED * (word & 255) + LUMA_GREEN * ((word >>> 8) & 255) + LUMA_BLUE * ((word >>> 16) & 255);
    if (alpha !== 255) luma = luma * (alpha / 255) + 255 * (1 - alpha / 255);
    values[to] = lightness[(luma * FINE + 0.5) | 0]!;
  }
}

function readSamples(
  { data, hasAlpha, channels, green, full, lightness }: LightnessSource,
  first: number,
  offsets: Int32Array,
  { values, from, step }: Target,
): void {
  const scale = (255 * FINE) / full;
  for (let i = 0, to = from; i < offsets.length; i += 1, to += step) {
    const at = (first + offsets[i]!) * channels;
    const alpha = hasAlpha ? data[at + channels - 1]! : full;
    let luma = LUMA_RED * data[at]! + LUMA_GREEN * data[at + green]! + LUMA_BLUE * data[at + 2 * green]!;
    if (alpha !== full) luma = luma * (alpha / full) + full * (1 - alpha / full);
    values[to] = lightness[(luma * scale + 0.5) | 0]!;
  }
}
