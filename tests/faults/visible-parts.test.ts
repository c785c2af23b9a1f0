import { describe, expect, it } from 'vitest';
import { boxOfPart, findVisibleParts } from '../../src/faults/visible-parts.ts';
import { partsByImageMagick } from '../parts-by-imagemagick.ts';
import { CLEAR, GREEN, paintRaster, seededNumbers } from '../pictures.ts';
import { requireWitness } from '../witness.ts';

const [WIDTH, HEIGHT] = [97, 83];

describe('findVisibleParts', () => {
  it('finds the parts that ImageMagick finds, in noise from sparse to dense', (context) => {
    requireWitness(context, 'convert');
    for (const share of [0.05, 0.2, 0.35, 0.5, 0.7]) {
      const random = seededNumbers(share * 100);
      const raster = paintRaster(WIDTH, HEIGHT, () => (random() < share ? GREEN : CLEAR));
      const parts = findVisibleParts(raster);
      const ours = Array.from({ length: parts.count }, (_, i) => {
        const { x, y, width, height } = boxOfPart(parts, i);
        return `${width}x${height}+${x}+${y} ${parts.pixels[i]}`;
      });
      const mask = Buffer.from(raster.data.filter((_, i) => i % 4 === 3));
      expect(ours.sort()).toEqual(partsByImageMagick(mask, WIDTH, HEIGHT));
    }
  });

  it('finds one part where there is no alpha, none where nothing is visible', () => {
    const clear = paintRaster(4, 3, () => CLEAR);
    expect(findVisibleParts(clear).count).toBe(0);
    const gray = { ...clear, model: 'gray', hasAlpha: false, data: new Uint8Array(12) } as const;
    const parts = findVisibleParts(gray);
    expect([parts.count, boxOfPart(parts, 0)]).toEqual([1, { x: 0, y: 0, width: 4, height: 3 }]);
  });
});
