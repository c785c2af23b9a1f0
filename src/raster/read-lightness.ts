import { labRoot } from '../colour/lab.ts';
import { decodeSrgb } from '../colour/srgb.ts';
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

/**
 * L* over white of the pixels `first + offsets[i]`, counted in rows from the top left, in the raster's own space, by the
 * luma of ITU-R BT.709-6, 3.2. Gray or rgb.
 */
export function readLightness(
  raster: Raster,
  first: number,
  offsets: Int32Array,
  { values, from, step }: Target,
): void {
  const { hasAlpha, model, data } = raster;
  if (model === 'cmyk') throw new Error('Expected a gray or rgb raster, received cmyk.');
  const lightness = lightnessTable();
  const channels = channelsOf(raster);
  const full = fullScaleOf(raster);
  const green = model === 'rgb' ? 1 : 0;
  const scale = (255 * FINE) / full;
  for (let i = 0, to = from; i < offsets.length; i += 1, to += step) {
    const at = (first + offsets[i]!) * channels;
    const alpha = hasAlpha ? data[at + channels - 1]! : full;
    let luma = 0.2126 * data[at]! + 0.7152 * data[at + green]! + 0.0722 * data[at + 2 * green]!;
    if (alpha !== full) luma = luma * (alpha / full) + full * (1 - alpha / full);
    values[to] = lightness[(luma * scale + 0.5) | 0]!;
  }
}
