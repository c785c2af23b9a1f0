import { describe, expect, it } from 'vitest';
import { findRaggedHoles } from '../../src/faults/find-ragged-holes.ts';
import { partsByImageMagick } from '../parts-by-imagemagick.ts';
import { paintRaster, type Rgba, seededNumbers } from '../pictures.ts';
import { requireWitness } from '../witness.ts';

const SIDE = 240;
const WHOLE = { x: 0, y: 0, width: SIDE, height: SIDE };
/** Middle and radius of ragged holes, px; the last is open to the outside. */
const HOLES = [
  [50, 50, 20],
  [150, 60, 12],
  [60, 170, 30],
  [170, 170, 8],
  [238, 110, 20],
] as const;

/** Opaque art with these holes, each with a grainy rim of 6 px. */
function ragged(seed: number) {
  const next = seededNumbers(seed);
  return paintRaster(SIDE, SIDE, (x, y): Rgba => {
    const far = Math.min(...HOLES.map(([cx, cy, r]) => Math.hypot(x - cx, y - cy) - r));
    return [40, 120, 60, far <= 0 ? 0 : far < 6 ? Math.round(255 * next()) : 255];
  });
}

describe('findRaggedHoles', () => {
  it.for([1, 2, 3])('finds the holes that ImageMagick finds in the same mask, seed %d', (seed, context) => {
    requireWitness(context, 'convert');
    const raster = ragged(seed);
    const found = findRaggedHoles(raster, WHOLE, 10).map(
      ({ boxPx: { x, y, width, height }, pixels }) => `${width}x${height}+${x}+${y} ${pixels}`,
    );
    expect(found).toHaveLength(4);
    const open = Buffer.from(
      raster.data.filter((_, i) => i % 4 === 3).map((alpha) => (alpha < 128 ? 255 : 0)),
    );
    const theirs = partsByImageMagick(open, SIDE, SIDE).filter((part) => {
      const [width, height, x, y] = part.match(/\d+/g)!.map(Number) as [number, number, number, number];
      return width >= 10 && height >= 10 && x > 0 && y > 0 && x + width < SIDE && y + height < SIDE;
    });
    expect(found.sort()).toEqual(theirs);
  });

  it('finds none where no alpha is, and none narrower than asked for', () => {
    const raster = ragged(1);
    expect(findRaggedHoles({ ...raster, hasAlpha: false }, WHOLE, 10)).toEqual([]);
    expect(findRaggedHoles(raster, WHOLE, SIDE)).toEqual([]);
  });
});
