import { expect, it } from 'vitest';
import { makeLumaPlane } from '../../src/raster/luma-plane.ts';
import { createRaster, type Raster } from '../../src/raster/raster.ts';
import { seededNumbers } from '../pictures.ts';

/** Every third pixel opaque, every third clear. */
function paint(depth: 8 | 16): Raster {
  const raster = createRaster({ widthPx: 60, heightPx: 50, model: 'rgb', hasAlpha: true, depth });
  const full = depth === 8 ? 255 : 65535;
  const next = seededNumbers(9);
  for (let i = 0; i < raster.data.length; i += 1) raster.data[i] = Math.floor(next() * (full + 1));
  for (let pixel = 0; pixel < 3000; pixel += 1)
    if (pixel % 3 < 2) raster.data[4 * pixel + 3] = pixel % 3 === 0 ? full : 0;
  return raster;
}

it.each([8, 16] as const)(
  'luma over white of %d bits is within half a code of its definition, and half a code of its colours',
  (depth) => {
    const raster = paint(depth);
    const full = depth === 8 ? 255 : 65535;
    makeLumaPlane(raster).forEach((code, pixel) => {
      const [red, green, blue, alpha] = raster.data.subarray(4 * pixel, 4 * pixel + 4);
      const over = (sample: number) => (255 * (sample * alpha! + full * (full - alpha!))) / full ** 2;
      const luma = 0.2126 * over(red!) + 0.7152 * over(green!) + 0.0722 * over(blue!);
      expect(Math.abs(code - luma)).toBeLessThan(1.001);
      if (alpha === 0) expect(code).toBe(255);
    });
  },
);

it('of a cut-out is the same whether it is read a pixel or a sample at a time', () => {
  const raster = paint(8);
  // Off its place by one byte, it cannot be seen as words.
  const bytes = new Uint8Array(raster.data.length + 1);
  bytes.set(raster.data, 1);
  expect(makeLumaPlane({ ...raster, data: bytes.subarray(1) })).toEqual(makeLumaPlane(raster));
});
