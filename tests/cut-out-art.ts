import type { Raster } from '../src/raster/raster.ts';
import { CLEAR, GREEN, paintRaster, type Rgba, seededNumbers } from './pictures.ts';

/** How a hole ends: cut clean with a rim of half a pixel, rising evenly, or grainy as a bad cut-out leaves it. */
export type Rim = 'clean' | 'soft' | 'ragged';

/** A green square of 60 mm, 5 px a millimetre, with a round hole `holeMm` across and a rim `rimMm` wide round it. */
export function holed(holeMm: number, rim: Rim, rimMm: number, seed = 3): Raster {
  const next = seededNumbers(seed);
  return paintRaster(300, 300, (x, y): Rgba => {
    const far = Math.hypot(x - 150, y - 150) - (holeMm / 2) * 5;
    const width = rim === 'clean' ? 1 : rimMm * 5;
    const covered = Math.min(1, Math.max(0, far / width));
    const alpha = rim === 'ragged' && covered > 0 && covered < 1 ? next() : covered;
    return alpha === 0 ? CLEAR : [40, 120, 60, Math.round(255 * alpha)];
  });
}

/** A disc of 20 mm in a box of 60 mm, 5 px a millimetre, on a ground of one gray with grain. */
export function boxOf(gray: number, grain = 0, seed = 7): Raster {
  const next = seededNumbers(seed);
  return paintRaster(300, 300, (x, y): Rgba => {
    if (Math.hypot(x - 150, y - 150) < 50) return GREEN;
    const code = Math.min(255, gray + Math.round((next() * 2 - 1) * grain));
    return [code, code, code, 255];
  });
}

/** A square of 40 mm, 10 px a millimetre, and a speck of `sizePx`, `awayPx` to the right of it. */
export function speckBeside(sizePx: number, awayPx: number, alpha = 255): Raster {
  return paintRaster(700, 400, (x, y): Rgba => {
    if (x < 400) return GREEN;
    const speck = x >= 400 + awayPx && x < 400 + awayPx + sizePx && y >= 200 && y < 200 + sizePx;
    return speck ? [40, 120, 60, alpha] : CLEAR;
  });
}

/** A disc of 50 mm in a canvas of 60 mm, 5 px a millimetre, of one colour and alpha, its rim of one pixel. */
export function discOf(colour: readonly [number, number, number], alpha: number): Raster {
  return paintRaster(300, 300, (x, y): Rgba => {
    const covered = Math.min(1, Math.max(0, 125 - Math.hypot(x - 150, y - 150)));
    return covered === 0 ? CLEAR : [...colour, Math.round(alpha * covered)];
  });
}
