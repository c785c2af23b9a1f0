import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { flattenRaster } from '../../src/raster/flatten.ts';
import { createRaster, fullScaleOf } from '../../src/raster/raster.ts';
import { anyRaster, pixelAt, rasterOf } from './any-raster.ts';

const white = { r: 255, g: 255, b: 255 };

describe('flattenRaster', () => {
  it('rounds every mix of sample, alpha and background at 8 bits as exact arithmetic does', () => {
    for (const background of [0, 1, 77, 128, 254, 255]) {
      // All 65536 pairs of sample and alpha.
      const raster = createRaster({ widthPx: 256, heightPx: 256, model: 'rgb', hasAlpha: true, depth: 8 });
      for (let pair = 0; pair < 65536; pair++)
        raster.data.set([pair & 255, 255 - (pair & 255), pair & 255, pair >> 8], pair * 4);
      const { data } = flattenRaster(raster, { r: background, g: background, b: background });
      let wrong = 0;
      for (let pair = 0; pair < 65536; pair++) {
        const sample = pair & 255;
        const alpha = pair >> 8;
        const mix = (value: number) => Math.round((value * alpha + background * (255 - alpha)) / 255);
        if (data[pair * 3] !== mix(sample) || data[pair * 3 + 1] !== mix(255 - sample)) wrong++;
      }
      expect(wrong).toBe(0);
    }
  });

  it('mixes both depths and gray within half a step of real arithmetic', () => {
    const byte = fc.nat(255);
    fc.assert(
      fc.property(anyRaster(), fc.record({ r: byte, g: byte, b: byte }), (raster, colour) => {
        const flat = flattenRaster(raster, colour);
        expect(flat).toMatchObject({ model: 'rgb', hasAlpha: false, depth: 8 });
        const full = fullScaleOf(raster);
        for (let y = 0; y < raster.heightPx; y++)
          for (let x = 0; x < raster.widthPx; x++) {
            const samples = pixelAt(raster, x, y);
            const alpha = raster.hasAlpha ? samples.pop()! / full : 1;
            const colours = raster.model === 'gray' ? [samples[0]!, samples[0]!, samples[0]!] : samples;
            const backgrounds = [colour.r, colour.g, colour.b];
            const exact = colours.map((c, i) => (c / full) * 255 * alpha + backgrounds[i]! * (1 - alpha));
            // Half a step, and what the test's own arithmetic loses.
            pixelAt(flat, x, y).forEach((sample, i) => {
              expect(Math.abs(sample - exact[i]!)).toBeLessThanOrEqual(0.5 + 1e-9);
            });
          }
      }),
      { seed: 9, numRuns: 300 },
    );
  });

  it('keeps opaque colours and hides what is under clear pixels', () => {
    const shape = { widthPx: 2, heightPx: 1, model: 'rgb', hasAlpha: true, depth: 8 } as const;
    const flat = flattenRaster(rasterOf(shape, [9, 8, 7, 255, 200, 0, 0, 0]), white);
    expect([...flat.data]).toEqual([9, 8, 7, 255, 255, 255]);
  });

  it('gives the same when it writes over the samples it reads', () => {
    fc.assert(
      fc.property(anyRaster(9, { model: 'rgb', hasAlpha: true, depth: 8 }), (raster) => {
        const apart = flattenRaster(raster, white);
        const over = flattenRaster(raster, white, raster.data as Uint8Array);
        expect([...over.data]).toEqual([...apart.data]);
      }),
      { seed: 10, numRuns: 200 },
    );
  });
});
