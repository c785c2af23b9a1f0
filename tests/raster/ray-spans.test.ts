import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { findRaySpans } from '../../src/raster/ray-spans.ts';

describe('findRaySpans', () => {
  const column = (x: number) => x >= 3 && x < 5;

  it('is exact to the edge of the pixel, both ways', () => {
    const [there] = findRaySpans(column, 0, 0.5, 10, 0.5);
    expect(there!.from).toBeCloseTo(0.3, 12);
    expect(there!.to).toBeCloseTo(0.5, 12);
    const [back] = findRaySpans(column, 10, 0.5, 0, 0.5);
    expect(back!.from).toBeCloseTo(0.5, 12);
    expect(back!.to).toBeCloseTo(0.7, 12);
  });

  it('a ray that starts on the edge of the art sees the side it runs to', () => {
    expect(findRaySpans(column, 5, 0.5, 9, 0.5)).toEqual([]);
    expect(findRaySpans(column, 5, 0.5, 1, 0.5)).toEqual([{ from: 0, to: 0.5 }]);
  });

  it('agrees with walking the ray in ten thousand small steps', () => {
    const isArt = (x: number, y: number) => ((x * 7 + y * 13) & 3) === 1;
    // Off the pixels' borders, where a sample would not know which side it is on.
    const coordinate = fc.integer({ min: -80, max: 240 }).map((i) => i / 16 + 1 / 37);
    fc.assert(
      fc.property(coordinate, coordinate, coordinate, coordinate, (x0, y0, x1, y1) => {
        const spans = findRaySpans(isArt, x0, y0, x1, y1);
        const covered = spans.reduce((sum, { from, to }) => sum + to - from, 0);
        let hits = 0;
        for (let i = 0; i < 10000; i += 1) {
          const t = (i + 0.5) / 10000;
          if (isArt(Math.floor(x0 + (x1 - x0) * t), Math.floor(y0 + (y1 - y0) * t))) hits += 1;
        }
        // Each border crossing may cost one of the 10,000 steps; a ray of 30 px crosses at most 45 borders.
        expect(Math.abs(covered - hits / 10000)).toBeLessThan(45 / 10000);
      }),
      { numRuns: 200, seed: 12 },
    );
  });
});
