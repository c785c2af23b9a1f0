import { describe, expect, it } from 'vitest';
import { bandsOverWhite } from '../../src/raster/bands-over-white.ts';
import { flattenRaster } from '../../src/raster/flatten.ts';
import { createRaster, type Raster } from '../../src/raster/raster.ts';
import { seededNumbers } from '../pictures.ts';

const WHITE = { r: 255, g: 255, b: 255 };

function randomRaster(shape: Omit<Raster, 'data'>): Raster {
  const raster = createRaster(shape);
  const next = seededNumbers(3);
  const most = shape.depth === 8 ? 256 : 65536;
  for (let i = 0; i < raster.data.length; i++) {
    const value = next();
    // Often clear or full, as alpha is.
    raster.data[i] = value < 0.2 ? 0 : value > 0.8 ? most - 1 : Math.floor(value * most);
  }
  return raster;
}

const collect = (raster: Raster) =>
  [...bandsOverWhite(raster)].map(({ colours, visible, firstPixel, pixels }) => ({
    colours,
    visible,
    firstPixel,
    pixels,
  }));

describe('bandsOverWhite', () => {
  // Second implementation: flattenRaster, which makes the print-ready file. 150 rows are three bands.
  it.each([
    ['rgb', true, 8],
    ['rgb', false, 8],
    ['gray', true, 8],
    ['gray', false, 8],
    ['rgb', true, 16],
    ['gray', true, 16],
  ] as const)('%s, alpha %s, %d bits: as the print-ready file has it', (model, hasAlpha, depth) => {
    const raster = randomRaster({ widthPx: 7, heightPx: 150, model, hasAlpha, depth });
    const flat = flattenRaster(raster, WHITE).data;
    let seen = 0;
    for (const { colours, visible, firstPixel, pixels } of bandsOverWhite(raster)) {
      expect(firstPixel).toBe(seen);
      seen += pixels;
      for (let i = 0; i < pixels; i++) {
        const at = firstPixel + i;
        const channels = raster.data.length / (7 * 150);
        const alpha = hasAlpha ? raster.data[at * channels + channels - 1]! : 1;
        expect(visible[i]).toBe(alpha > 0 ? 1 : 0);
        for (let k = 0; k < 3; k++) {
          const code = depth === 8 ? colours[3 * i + k]! : colours[3 * i + k]! / 257;
          expect(Math.abs(code - flat[at * 3 + k]!)).toBeLessThanOrEqual(depth === 8 ? 0 : 0.5 + 1 / 257);
        }
      }
    }
    expect(seen).toBe(7 * 150);
  });

  it('ends with what is left of the rows', () => {
    const raster = randomRaster({ widthPx: 3, heightPx: 65, model: 'rgb', hasAlpha: false, depth: 8 });
    expect(collect(raster).map(({ firstPixel, pixels }) => [firstPixel, pixels])).toEqual([
      [0, 192],
      [192, 3],
    ]);
  });
});
