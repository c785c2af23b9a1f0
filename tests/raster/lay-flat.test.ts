import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { flattenRaster } from '../../src/raster/flatten.ts';
import { layFlat } from '../../src/raster/lay-flat.ts';
import { mirrorRaster } from '../../src/raster/mirror.ts';
import { padRaster } from '../../src/raster/pad.ts';
import { createRaster } from '../../src/raster/raster.ts';
import { paintRaster, seededNumbers } from '../pictures.ts';

const side = fc.integer({ min: 1, max: 12 });
const code = fc.integer({ min: 0, max: 255 });

describe('layFlat', () => {
  it('is the same picture as padding, flattening and mirroring one after the other', () => {
    fc.assert(
      fc.property(
        fc.record({
          art: fc.tuple(side, side),
          canvas: fc.tuple(side, side),
          x: fc.integer({ min: -14, max: 14 }),
          y: fc.integer({ min: -14, max: 14 }),
        }),
        fc.record({ r: code, g: code, b: code }),
        fc.boolean(),
        fc.integer({ min: 1, max: 1e6 }),
        ({ art, canvas, x, y }, background, mirrored, seed) => {
          const next = seededNumbers(seed);
          const alphas = [0, 1, 127, 254, 255];
          const raster = paintRaster(art[0], art[1], () => [
            next() * 256,
            next() * 256,
            next() * 256,
            alphas[Math.floor(next() * 5)]!,
          ]);
          const place = { widthPx: canvas[0], heightPx: canvas[1], x, y };
          const flat = flattenRaster(padRaster(raster, place), background);
          expect(layFlat(raster, place, background, mirrored)).toEqual(mirrored ? mirrorRaster(flat) : flat);
        },
      ),
      { seed: 61, numRuns: 1000 },
    );
  });

  it('leaves other rasters to the three', () => {
    const gray = createRaster({ widthPx: 2, heightPx: 2, model: 'gray', hasAlpha: true, depth: 8 });
    expect(layFlat(gray, { widthPx: 4, heightPx: 4, x: 1, y: 1 }, { r: 1, g: 2, b: 3 }, true)).toBeNull();
  });
});
