import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { findEnlarging } from '../../src/faults/find-enlarging.ts';
import { findRepeatedPixels } from '../../src/faults/repeated-pixels.ts';
import { fitSamples } from '../../src/faults/sample-fit.ts';
import { PATCH_PX, prepareSampling } from '../../src/faults/sampling.ts';
import { cropRaster } from '../../src/raster/crop.ts';
import { readLumaLines } from '../../src/raster/luma-lines.ts';
import type { Raster } from '../../src/raster/raster.ts';
import { DEGENERATE_ART } from '../checks/degenerate-art.ts';
import { paintLeaves } from '../leafy-art.ts';
import { paintPhoto, scaled } from '../photo-like-art.ts';
import { CLEAR, paintRaster, type Rgba, seededNumbers } from '../pictures.ts';

const LINES = 128;
const along = (raster: Raster) =>
  (['x', 'y'] as const).map((axis) => findEnlarging(readLumaLines(raster, axis, LINES)));
const leaves = paintLeaves();

describe('by how much a picture was enlarged', () => {
  it.each(
    ([1.25, 1.5, 2, 2.5, 3, 4, 5, 6] as const).flatMap((factor) =>
      (['linear', 'cubic', 'mitchell', 'lanczos2', 'lanczos3', 'nearest'] as const).map(
        (kernel) => [factor, kernel] as const,
      ),
    ),
  )('%d times by %s', { timeout: 60_000 }, async (factor, kernel) => {
    for (const found of along(await scaled(leaves, factor, kernel))) {
      expect(Math.abs(found!.factor / factor - 1)).toBeLessThan(0.02);
      expect(found!.by).toBe(kernel === 'nearest' ? 'repeated-pixels' : 'interpolation');
    }
  });

  it('not at all', () => {
    for (const scene of ['things', 'meadow', 'clouds'] as const)
      for (const found of along(paintPhoto(scene))) expect(found?.factor ?? 1).toBe(1);
    expect(along(leaves)).toMatchObject([
      { factor: 1, by: 'nothing' },
      { factor: 1, by: 'nothing' },
    ]);
  });

  it('wherever the picture was cropped since', async () => {
    const large = await scaled(leaves, 2.5, 'cubic');
    const cut = cropRaster(large, { x: 13, y: 8, width: 600, height: 400 });
    for (const found of along(cut)) expect(found!.factor).toBeCloseTo(2.5, 1);
  });

  it('is not known of soft art', () => {
    const soft = paintRaster(300, 300, (x, y): Rgba => {
      const code = Math.round(128 + 60 * Math.sin(x / 40) * Math.cos(y / 55));
      return [code, code, code, 255];
    });
    expect(along(soft)).toEqual([null, null]);
  });

  // Flat art has no detail between its outlines: it may be unknown, it must not be called coarse.
  it.each([
    ['discs', (x: number, y: number) => Math.hypot((x % 97) - 48, (y % 89) - 44) < 31],
    ['slanted stripes', (x: number, y: number) => Math.floor((x + 0.37 * y) / 11) % 2 === 0],
    ['checkers of 16 px', (x: number, y: number) => (Math.floor(x / 16) + Math.floor(y / 16)) % 2 === 0],
    ['letters of strokes', (x: number, y: number) => Math.abs(((x * 7 + y * 3) % 83) - 41) < 9],
  ])('is never more than 20 %% too large of flat %s', (_, isInk) => {
    const flat = paintRaster(
      600,
      500,
      (x, y): Rgba => (isInk(x, y) ? [30, 90, 40, 255] : [230, 220, 200, 255]),
    );
    for (const found of along(flat)) expect(found?.factor ?? 1).toBeLessThan(1.25);
  });

  it.each(DEGENERATE_ART)('says nothing false of %s', (_, raster) => {
    for (const found of along(raster)) expect(found?.factor ?? 1).toBe(1);
  });

  it('takes what is clear for nothing', () => {
    expect(along(paintRaster(200, 200, () => CLEAR))).toEqual([null, null]);
  });
});

describe('samples that explain a patch', () => {
  const lineOf = (seed: number, factor: number) => {
    const next = seededNumbers(seed);
    const samples = Float64Array.from({ length: 90 }, () => 200 * next());
    return Float64Array.from({ length: PATCH_PX }, (_, i) => {
      const place = i / factor + 4;
      const [at, part] = [Math.floor(place), place % 1];
      return samples[at]! * (1 - part) + samples[at + 1]! * part - 100;
    });
  };

  it('leave nothing at their own distance, and a lot at any other', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 999 }),
        fc.double({ min: 1.6, max: 6, noNaN: true }),
        (seed, factor) => {
          const patch = lineOf(seed, factor);
          const [right] = fitSamples([patch], prepareSampling(factor));
          const [wrong] = fitSamples([patch], prepareSampling(factor * 1.1));
          expect(right).toBeLessThan(0.1);
          expect(wrong).toBeGreaterThan(2);
        },
      ),
      { seed: 9, numRuns: 60 },
    );
  });
});

describe('repeated pixels', () => {
  const lines = (factor: number, length = 200) => {
    const next = seededNumbers(3);
    const samples = Array.from({ length }, () => Math.floor(256 * next()));
    const line = Float32Array.from(
      { length: Math.floor(length * factor) },
      (_, i) => samples[Math.floor(i / factor)]!,
    );
    return { length: line.length, values: [line], whole: [new Uint8Array(line.length).fill(1)] };
  };

  it.each([1.5, 2, 2.5, 3, 3.7, 6, 8])('%d times', (factor) => {
    expect(Math.abs(findRepeatedPixels(lines(factor))! / factor - 1)).toBeLessThan(0.02);
  });

  it('are none where each pixel is its own, or too few to tell', () => {
    expect(findRepeatedPixels(lines(1))).toBeNull();
    expect(findRepeatedPixels(lines(3, 20))).toBeNull();
  });
});
