import type { Raster } from '../src/raster/raster.ts';
import { paintRaster, type Rgba, seededNumbers } from './pictures.ts';

const SIZE = { width: 320, height: 220 };
const LEAVES = 900;

/** Leaves one over the other, 3 to 14 px across, softly lit, with the grain of a sensor: detail of single pixels all over. */
export function paintLeaves(): Raster {
  const next = seededNumbers(77);
  const codes = new Float64Array(SIZE.width * SIZE.height).fill(110);
  for (let leaf = 0; leaf < LEAVES; leaf += 1) {
    const [x, y, radius, tone, turn] = [
      next() * SIZE.width,
      next() * SIZE.height,
      1.5 + 5.5 * next(),
      50 + 150 * next(),
      next(),
    ];
    for (let j = Math.max(0, Math.floor(y - 8)); j < Math.min(SIZE.height, y + 8); j += 1)
      for (let i = Math.max(0, Math.floor(x - 8)); i < Math.min(SIZE.width, x + 8); i += 1) {
        const far = Math.hypot(i - x + turn * (j - y), j - y) - radius;
        const cover = Math.max(0, Math.min(1, 0.5 - far));
        codes[j * SIZE.width + i]! += cover * (tone + 3 * (i - x) - codes[j * SIZE.width + i]!);
      }
  }
  const bounded = (code: number) => Math.max(8, Math.min(247, Math.round(code)));
  return paintRaster(SIZE.width, SIZE.height, (x, y): Rgba => {
    const code = codes[y * SIZE.width + x]! + 4 * (next() - 0.5);
    return [bounded(code * 0.8), bounded(code), bounded(code * 0.6), 255];
  });
}
