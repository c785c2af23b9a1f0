import { describe, expect, it } from 'vitest';
import { createRaster } from '../../src/raster/raster.ts';
import { toRgb8 } from '../../src/raster/to-8-bit.ts';
import { rasterOf } from './any-raster.ts';

describe('toRgb8', () => {
  it('rounds every 16-bit sample to the nearest byte (ISO/IEC 15948, 13.12: round(v * 255 / 65535))', () => {
    const raster = createRaster({ widthPx: 65536, heightPx: 1, model: 'gray', hasAlpha: false, depth: 16 });
    for (let value = 0; value < 65536; value++) raster.data[value] = value;
    const { data } = toRgb8(raster);
    let wrong = 0;
    for (let value = 0; value < 65536; value++)
      if (data[value * 3] !== Math.round((value * 255) / 65535)) wrong++;
    expect(wrong).toBe(0);
  });

  it('repeats gray and keeps alpha', () => {
    const gray = rasterOf(
      { widthPx: 2, heightPx: 1, model: 'gray', hasAlpha: true, depth: 16 },
      [65535, 0, 257, 514],
    );
    expect([...toRgb8(gray).data]).toEqual([255, 255, 255, 0, 1, 1, 1, 2]);
  });

  it('gives back 8-bit rgb as it is', () => {
    const raster = rasterOf({ widthPx: 1, heightPx: 1, model: 'rgb', hasAlpha: false, depth: 8 }, [1, 2, 3]);
    expect(toRgb8(raster)).toBe(raster);
  });
});
