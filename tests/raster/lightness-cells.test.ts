import { describe, expect, it } from 'vitest';
import { halveCells, readLightnessCells } from '../../src/raster/lightness-cells.ts';
import { paintPhoto } from '../photo-like-art.ts';
import { paintRaster } from '../pictures.ts';

const whole = ({ widthPx, heightPx }: { widthPx: number; heightPx: number }) => ({
  x: 0,
  y: 0,
  width: widthPx,
  height: heightPx,
});

describe('lightness of cells', () => {
  it('is that of each pixel where all find room', () => {
    // L* of sRGB 119 is 50.03 (IEC 61966-2-1, CIE 15).
    const art = paintRaster(5, 3, (x) =>
      x === 2 ? [119, 119, 119, 255] : x === 3 ? [0, 0, 0, 0] : [0, 0, 0, 255],
    );
    const { width, height, cellPx, values } = readLightnessCells(art, whole(art), 512);
    expect([width, height, cellPx]).toEqual([5, 3, 1]);
    expect(values[0]).toBe(0);
    expect(values[2]).toBeCloseTo(50.03, 1);
    expect(values[3]).toBeCloseTo(100, 6);
  });

  it('reads whole cells within the box only', () => {
    const art = paintRaster(100, 60, (x, y) =>
      x >= 10 && x < 91 && y >= 5 && y < 46 ? [255, 255, 255, 255] : [0, 0, 0, 255],
    );
    const { width, height, cellPx, values } = readLightnessCells(
      art,
      { x: 10, y: 5, width: 81, height: 41 },
      20,
    );
    expect([width, height, cellPx]).toEqual([16, 8, 5]);
    expect(Math.min(...values)).toBeCloseTo(100, 6);
  });

  it('of 16 pixels a cell lies within 1 L* of the mean of all, root mean square, on made photographs', () => {
    const art = paintPhoto('meadow');
    const fine = readLightnessCells(art, whole(art), 840);
    const coarse = readLightnessCells(art, whole(art), 105);
    let squares = 0;
    coarse.values.forEach((value, cell) => {
      const [x, y] = [(cell % coarse.width) * 8, Math.floor(cell / coarse.width) * 8];
      let sum = 0;
      for (let dy = 0; dy < 8; dy += 1)
        for (let dx = 0; dx < 8; dx += 1) sum += fine.values[(y + dy) * fine.width + x + dx]!;
      squares += (value - sum / 64) ** 2;
    });
    expect(Math.sqrt(squares / coarse.values.length)).toBeLessThan(1);
  });

  it('halved is the mean of four cells, without an odd row or column', () => {
    const cells = { width: 5, height: 3, cellPx: 4, values: Float64Array.from({ length: 15 }, (_, i) => i) };
    const { width, height, cellPx, values } = halveCells(cells);
    expect([width, height, cellPx]).toEqual([2, 1, 8]);
    expect([...values]).toEqual([(0 + 1 + 5 + 6) / 4, (2 + 3 + 7 + 8) / 4]);
  });
});
