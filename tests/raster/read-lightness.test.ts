import { expect, it } from 'vitest';
import { createRaster, type Raster } from '../../src/raster/raster.ts';
import { lightnessSource, readLightness } from '../../src/raster/read-lightness.ts';
import { seededNumbers } from '../pictures.ts';

const SIZE = { widthPx: 16, heightPx: 8 };

function paint(model: 'gray' | 'rgb', hasAlpha: boolean, depth: 8 | 16): Raster {
  const raster = createRaster({ ...SIZE, model, hasAlpha, depth });
  const next = seededNumbers(4);
  for (let i = 0; i < raster.data.length; i += 1)
    raster.data[i] = Math.floor(next() * (depth === 8 ? 256 : 65536));
  return raster;
}

/** CIE 15 of the luma over white of a pixel, without any table. */
function lightnessOf({ model, hasAlpha, depth, data }: Raster, pixel: number): number {
  const colours = model === 'gray' ? 1 : 3;
  const at = pixel * (colours + (hasAlpha ? 1 : 0));
  const full = depth === 8 ? 255 : 65535;
  const share = hasAlpha ? data[at + colours]! / full : 1;
  const over = (k: number) => (data[at + (model === 'gray' ? 0 : k)]! / full) * share + 1 - share;
  const luma = 0.2126 * over(0) + 0.7152 * over(1) + 0.0722 * over(2);
  const luminance = luma <= 0.04045 ? luma / 12.92 : ((luma + 0.055) / 1.055) ** 2.4;
  return luminance > 216 / 24389 ? 116 * Math.cbrt(luminance) - 16 : (luminance * 24389) / 27;
}

it.each([
  ['gray', false, 8],
  ['gray', true, 16],
  ['rgb', false, 16],
  ['rgb', true, 8],
  ['rgb', true, 16],
] as const)(
  'of %s, alpha %s, %d bits is that of CIE 15, where it was asked for',
  (model, hasAlpha, depth) => {
    const raster = paint(model, hasAlpha, depth);
    const offsets = Int32Array.from([0, 3, 5, 90]);
    const values = new Float32Array(12).fill(-1);
    readLightness(lightnessSource(raster), 20, offsets, { values, from: 1, step: 3 });
    for (const [i, offset] of offsets.entries()) {
      // A step of the table is a quarter of a code, which is 0.2 L* at most, in the dark.
      expect(Math.abs(values[1 + 3 * i]! - lightnessOf(raster, 20 + offset))).toBeLessThan(0.11);
    }
    expect([...values].filter((value) => value === -1)).toHaveLength(8);
  },
);
