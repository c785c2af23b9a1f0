import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { visitEdgeRuns } from '../../src/raster/edge-runs.ts';
import { fullScaleOf, type Raster } from '../../src/raster/raster.ts';
import { anyRaster, pixelAt, rasterOf } from './any-raster.ts';

/** Every pixel near an edge, as "x,y", found pixel by pixel from the definition. */
function findNear(raster: Raster, reachX: number, reachY: number): string[] {
  const near: string[] = [];
  for (let y = 0; y < raster.heightPx; y++)
    for (let x = 0; x < raster.widthPx; x++)
      for (let row = 0; row < raster.heightPx; row++)
        for (let column = 0; column < raster.widthPx; column++) {
          const within = Math.abs(row - y) <= reachY && Math.abs(column - x) <= reachX;
          if (within && pixelAt(raster, column, row).at(-1) !== fullScaleOf(raster)) near.push(`${x},${y}`);
        }
  return [...new Set(near)];
}

function visitNear(raster: Raster, reachX: number, reachY: number): string[] {
  const near: string[] = [];
  visitEdgeRuns(raster, reachX, reachY, (y, start, end) => {
    for (let x = start; x < end; x++) near.push(`${x},${y}`);
  });
  return near;
}

describe('visitEdgeRuns', () => {
  it('visits what lies within reach of a pixel that is not opaque, no more and no less', () => {
    fc.assert(
      fc.property(anyRaster(8, { hasAlpha: true }), fc.nat(5), fc.nat(5), (raster, reachX, reachY) => {
        expect(visitNear(raster, reachX, reachY)).toEqual(findNear(raster, reachX, reachY));
      }),
      { seed: 41, numRuns: 500 },
    );
  });

  it('visits no row of an opaque picture, with alpha or without', () => {
    const shape = { widthPx: 1, heightPx: 1, model: 'gray', depth: 8 } as const;
    expect(visitNear(rasterOf({ ...shape, hasAlpha: true }, [9, 255]), 2, 2)).toEqual([]);
    expect(visitNear(rasterOf({ ...shape, hasAlpha: false }, [9]), 2, 2)).toEqual([]);
  });
});
