import type { Raster } from '../src/raster/raster.ts';
import { paintRaster, type Rgba, seededNumbers } from './pictures.ts';

/** Printed this wide, at this many pixels a millimetre. */
export const STROKED_MM = 40;
const PX = 16;

/**
 * Art of 40 x 40 mm with three parallel strokes of 24 mm, 6 mm apart, turned by `degrees`, their rims antialiased over
 * one pixel: `ink` on `ground`, of 255.
 */
export function stroked(widthMm: number, degrees: number, ink: number, ground: number): Raster {
  const [cos, sin] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)];
  const side = STROKED_MM * PX;
  return paintRaster(side, side, (x, y): Rgba => {
    const [dx, dy] = [x + 0.5 - side / 2, y + 0.5 - side / 2];
    const along = Math.abs(dx * cos + dy * sin) - 12 * PX;
    const across = dy * cos - dx * sin;
    const nearest = Math.max(-1, Math.min(1, Math.round(across / (6 * PX)))) * 6 * PX;
    const inside = (widthMm / 2) * PX - Math.abs(across - nearest) + 0.5;
    const covered = Math.min(1, Math.max(0, Math.min(inside, 0.5 - along)));
    const code = Math.round(ground + (ink - ground) * covered);
    return [code, code, code, 255];
  });
}

/** Large shapes with corners and curves, each at least 3 mm: a star, a disc, a square on its tip. */
export function bold(ink: number, ground: number): Raster {
  const side = STROKED_MM * PX;
  return paintRaster(side, side, (x, y): Rgba => {
    const [xMm, yMm] = [(x + 0.5) / PX, (y + 0.5) / PX];
    const disc = Math.hypot(xMm - 10, yMm - 10) < 6;
    const tip = Math.abs(xMm - 28) + Math.abs(yMm - 11) < 7;
    const turn = Math.atan2(yMm - 27, xMm - 20);
    const star = Math.hypot(xMm - 20, yMm - 27) < 7 + 2.5 * Math.cos(5 * turn);
    const code = disc || tip || star ? ink : ground;
    return [code, code, code, 255];
  });
}

/** Waves with a grain of `grain` codes, as a photograph has it. */
export function grainy(grain: number): Raster {
  const next = seededNumbers(4);
  const side = STROKED_MM * PX;
  return paintRaster(side, side, (x, y): Rgba => {
    const code = Math.round(128 + 80 * Math.sin(x / 40) * Math.cos(y / 55) + (next() - 0.5) * grain);
    return [code, code, code, 255];
  });
}
