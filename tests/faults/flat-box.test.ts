import { describe, expect, it } from 'vitest';
import { findFlatBox } from '../../src/faults/flat-box.ts';
import { paintRaster, seededNumbers } from '../pictures.ts';
import { makeByWitness, requireWitness } from '../witness.ts';

const [WIDTH, HEIGHT] = [61, 43];
const BOX = { x: 0, y: 0, width: WIDTH, height: HEIGHT };

/** The number of the region (4-connected, of one value) that each pixel belongs to, by libvips. */
function regionsByVips(mask: Uint8Array): number[] {
  const header = Buffer.from(`P5 ${WIDTH} ${HEIGHT} 255\n`);
  const csv = makeByWitness(
    'vips',
    ['labelregions', 'mask.pgm', 'regions.csv'],
    {
      'mask.pgm': Buffer.concat([header, Buffer.from(mask)]),
    },
    'regions.csv',
  );
  return Buffer.from(csv).toString('utf8').trim().split(/\s+/).map(Number);
}

describe('findFlatBox', () => {
  it('takes the ground that hangs together with the rim, as the regions of libvips do', (context) => {
    requireWitness(context, 'vips');
    // Denser subjects enclose more ground, which is then none of the box.
    for (const share of [0.2, 0.4, 0.5, 0.6]) {
      const next = seededNumbers(share * 100);
      const isRim = (x: number, y: number) => x === 0 || y === 0 || x === WIDTH - 1 || y === HEIGHT - 1;
      const ground = Uint8Array.from({ length: WIDTH * HEIGHT }, (_, at) =>
        isRim(at % WIDTH, Math.floor(at / WIDTH)) || next() >= share ? 255 : 0,
      );
      const raster = paintRaster(WIDTH, HEIGHT, (x, y) =>
        ground[y * WIDTH + x] === 255 ? [245, 245, 245, 255] : [30, 90, 40, 255],
      );
      const regions = regionsByVips(ground);
      expect(regions).toHaveLength(ground.length);
      const box = findFlatBox(raster, BOX, () => true)!;
      expect(Array.from(box.mask)).toEqual(regions.map((region) => (region === regions[0] ? 1 : 0)));
      expect(box.pixels).toBe(regions.filter((region) => region === regions[0]).length);
    }
  });
});
