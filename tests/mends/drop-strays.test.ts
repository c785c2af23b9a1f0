import { describe, expect, it } from 'vitest';
import { checkArtwork } from '../../src/check-artwork.ts';
import { mendArtwork, reportMends } from '../../src/mend-artwork.ts';
import type { Raster } from '../../src/raster/raster.ts';
import { PLATE } from '../checks/jobs.ts';
import { artworkOf, blockRaster, CLEAR, GREEN, paintRaster } from '../pictures.ts';

const request = { blank: PLATE, mends: ['drop-strays'] };
const design = { x: 200, y: 200, width: 600, height: 600 };
const isSame = (a: Raster, b: Raster) => Buffer.from(a.data).equals(Buffer.from(b.data));
const within = (x: number, y: number) => x >= 200 && x < 800 && y >= 200 && y < 800;

describe('drop-strays', () => {
  it('leaves the design alone, tells what it did, and leaves the input as it was', async () => {
    const raster = paintRaster(1000, 1000, (x, y) =>
      within(x, y) || (x >= 950 && x < 955 && y === 7) ? GREEN : CLEAR,
    );
    const given = artworkOf({ ...raster, data: raster.data.slice() });
    const { artwork, mends } = await mendArtwork(given, request);
    expect(isSame(given.raster, raster)).toBe(true);
    expect(isSame(artwork.raster, blockRaster([1000, 1000], design))).toBe(true);
    const { outcomes } = await checkArtwork(artwork, request);
    expect(outcomes.find(({ check }) => check === 'stray-pixels')!.status).toBe('passed');
    const [entry] = reportMends(mends, outcomes);
    expect(entry).toMatchObject({
      mend: 'drop-strays',
      pixels: 5,
      largestAlpha: 255,
      mended: ['stray-pixels/enlarges-box'],
    });
    // 90 mm of safe area take the 600 px that are left.
    expect(entry!.areaMm2).toBeCloseTo(5 * (90 / 600) ** 2, 6);
    expect((await mendArtwork(artwork, request)).mends).toEqual([]);
  });

  it('goes on until nothing strays at the size that the design then has', async () => {
    // At the size with the far speck the near one is 1.9 mm away; without it, more than 2 mm.
    const raster = paintRaster(1000, 1000, (x, y) =>
      within(x, y) || (x === 999 && y === 999) || (x === 815 && y === 500) ? GREEN : CLEAR,
    );
    const { artwork } = await mendArtwork(artworkOf(raster), request);
    expect(isSame(artwork.raster, blockRaster([1000, 1000], design))).toBe(true);
    expect((await mendArtwork(artwork, request)).mends).toEqual([]);
  });

  it('gives the very same raster where nothing strays', async () => {
    const given = artworkOf(blockRaster([1000, 1000], design));
    expect((await mendArtwork(given, request)).artwork.raster).toBe(given.raster);
  });
});
