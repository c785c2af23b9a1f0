import type { Raster } from '../../src/raster/raster.ts';
import { CLEAR, GREEN, paintRaster, seededNumbers } from '../pictures.ts';

/** Art of which nothing can be said, by name: whatever measures structure must come to an end, and find none. */
export const DEGENERATE_ART: readonly (readonly [string, Raster])[] = [
  ['one pixel', paintRaster(1, 1, () => GREEN)],
  ['one colour', paintRaster(300, 300, () => GREEN)],
  ['all haze', paintRaster(200, 200, () => [0, 0, 0, 8])],
  ['1 px wide', paintRaster(1, 500, (_, y) => [y % 256, 0, 0, 255])],
  ['single pixels in a checkerboard', paintRaster(300, 300, (x, y) => ((x + y) % 2 ? GREEN : CLEAR))],
  ['noise', paintNoise(300)],
];

function paintNoise(side: number): Raster {
  const next = seededNumbers(2);
  return paintRaster(side, side, () => [256 * next(), 256 * next(), 9, 255]);
}
