import type { Raster } from '../src/raster/raster.ts';
import { CLEAR, GREEN, paintRaster, type Rgba, seededNumbers } from './pictures.ts';

/** Art of 60 x 60 mm at 5 px a millimetre: a green disc of 20 mm across, and round it what `alphaAt` gives in `colour`. */
export function paintHazy(
  alphaAt: (fromDiscMm: number, xMm: number, yMm: number) => number,
  colour: readonly [number, number, number] = [0, 0, 0],
): Raster {
  return paintRaster(300, 300, (x, y): Rgba => {
    const [xMm, yMm] = [(x + 0.5) / 5, (y + 0.5) / 5];
    const far = Math.hypot(xMm - 30, yMm - 30) - 10;
    if (far < 0) return GREEN;
    // Marks at two corners, so that the box of the art is the canvas.
    if ((xMm < 3 && yMm < 3) || (xMm > 57 && yMm > 57)) return GREEN;
    const alpha = Math.round(alphaAt(far, xMm, yMm));
    return alpha <= 0 ? CLEAR : [...colour, Math.min(255, alpha)];
  });
}

/** A veil of one alpha in a square of `sideMm` at the lower left, with grain. */
export function veilOf(alpha: number, sideMm: number, grain = 0): Raster {
  const next = seededNumbers(5);
  return paintHazy((_, x, y) => {
    const noise = grain === 0 ? 0 : Math.round((next() * 2 - 1) * grain);
    return x > 2 && x < 2 + sideMm && y > 58 - sideMm && y < 58 ? Math.max(1, alpha + noise) : 0;
  });
}

/** A glow round the disc that falls from `most` to nothing within `reachMm`. */
export function glowOf(most: number, reachMm: number, shape: 'linear' | 'bell'): Raster {
  return paintHazy((far) =>
    shape === 'linear' ? most * (1 - far / reachMm) : most * Math.exp(-0.5 * ((3 * far) / reachMm) ** 2),
  );
}
