import { labRoot } from '../colour/lab.ts';
import { decodeSrgb } from '../colour/srgb.ts';
import type { RectPx } from '../geometry/rectangle.ts';
import { channelsOf, fullScaleOf, type Raster } from './raster.ts';

/** Some rows (`x`: along them) or columns (`y`) of a picture, evenly spread over a box of whole pixels. */
export interface LightnessLines {
  readonly along: 'x' | 'y';
  readonly boxPx: RectPx;
  /** Pixels of a line. */
  readonly length: number;
  /** L* of each line over white, 0…100. */
  readonly values: readonly Float32Array[];
  /** Where each lies across, pixels from the top or left of the box. */
  readonly at: readonly number[];
}

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

/**
 * At most `most` rows or columns of the box, at equal distances. Lines of a gray or rgb raster composited over white in
 * its own space, by the luma of ITU-R BT.709-6, 3.2.
 */
export function readLightnessLines(
  raster: Raster,
  boxPx: RectPx,
  along: 'x' | 'y',
  most: number,
): LightnessLines {
  const length = along === 'x' ? boxPx.width : boxPx.height;
  const across = along === 'x' ? boxPx.height : boxPx.width;
  const count = Math.min(most, across);
  const at = Array.from({ length: count }, (_, i) => Math.floor(((i + 0.5) * across) / count));
  return { along, boxPx, length, at, values: at.map((line) => readLine(raster, boxPx, along, line)) };
}

function readLine(raster: Raster, boxPx: RectPx, along: 'x' | 'y', line: number): Float32Array {
  const read = makeLightnessReader(raster);
  const step = along === 'x' ? 1 : raster.widthPx;
  const x = boxPx.x + (along === 'x' ? 0 : line);
  const y = boxPx.y + (along === 'x' ? line : 0);
  const values = new Float32Array(along === 'x' ? boxPx.width : boxPx.height);
  let pixel = y * raster.widthPx + x;
  for (let i = 0; i < values.length; i += 1, pixel += step) values[i] = read(pixel);
  return values;
}

/** L* of a pixel, counted in rows from the top left, over white in the raster's own space. Gray or rgb. */
export function makeLightnessReader(raster: Raster): (pixel: number) => number {
  const { hasAlpha, model, data } = raster;
  if (model === 'cmyk') throw new Error('Expected a gray or rgb raster, received cmyk.');
  const lightness = lightnessTable();
  const channels = channelsOf(raster);
  const full = fullScaleOf(raster);
  const [green, blue] = model === 'rgb' ? [1, 2] : [0, 0];
  const scale = (255 * FINE) / full;
  return (pixel) => {
    const from = pixel * channels;
    const luma = 0.2126 * data[from]! + 0.7152 * data[from + green]! + 0.0722 * data[from + blue]!;
    const share = hasAlpha ? data[from + channels - 1]! / full : 1;
    return lightness[Math.floor((luma * share + full * (1 - share)) * scale + 0.5)]!;
  };
}
