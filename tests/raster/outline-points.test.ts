import { describe, expect, it } from 'vitest';
import { makeArtTest } from '../../src/raster/art-test.ts';
import { listOutlinePoints } from '../../src/raster/outline-points.ts';
import { CLEAR, GREEN, paintRaster } from '../pictures.ts';

const pointsOf = (width: number, height: number, isGreen: (x: number, y: number) => boolean) => {
  const raster = paintRaster(width, height, (x, y) => (isGreen(x, y) ? GREEN : CLEAR));
  return listOutlinePoints(makeArtTest(raster, { from: 'visible', whiteIsNoArt: false }), {
    x: 0,
    y: 0,
    width,
    height,
  });
};
const unique = (points: readonly { readonly x: number; readonly y: number }[]) =>
  new Set(points.map(({ x, y }) => `${x},${y}`));

describe('listOutlinePoints', () => {
  it('an L: its corners, the inward one too, and nothing of its inside', () => {
    const found = unique(pointsOf(12, 12, (x, y) => x < 4 || y >= 8));
    for (const corner of ['0,0', '4,0', '4,8', '12,8', '12,12', '0,12']) expect(found).toContain(corner);
    expect(found).not.toContain('2,10');
  });

  it('a hole within is no rim: what is inside the rim is inside', () => {
    const ring = unique(pointsOf(20, 20, (x, y) => Math.max(Math.abs(x - 9.5), Math.abs(y - 9.5)) > 4));
    expect(ring).not.toContain('6,6');
    expect(ring).toContain('0,0');
  });

  it('two islands have a rim each', () => {
    expect(unique(pointsOf(9, 3, (x) => x < 3 || x >= 6)).size).toBe(2 * 16);
  });

  it('art of a quarter of a million rim pixels is held by few points, none of it beyond them', () => {
    const points = pointsOf(1000, 1000, (x, y) => x % 2 === 0 && y % 2 === 0);
    expect(points.length).toBeLessThanOrEqual(4000);
    expect(Math.max(...points.map(({ x }) => x))).toBe(999);
    expect(Math.min(...points.map(({ y }) => y))).toBe(0);
  });
});
