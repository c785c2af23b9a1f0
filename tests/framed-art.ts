import type { Raster } from '../src/raster/raster.ts';
import { paintRaster, type Rgba, seededNumbers } from './pictures.ts';

/** Pixels a millimetre of art that is printed `ART_MM` wide: the plate of 100 mm and its bleed of 3 mm. */
const PX = 12;
export const ART_MM = 106;

export type Ground = 'plain' | 'waves' | 'grain';

/** How far inside the plate's or the disc's edge a pixel of the art lies, mm. */
function insideOf(shape: 'plate' | 'disc', x: number, y: number): number {
  const [xMm, yMm] = [(x + 0.5) / PX - 53, (y + 0.5) / PX - 53];
  return 50 - (shape === 'disc' ? Math.hypot(xMm, yMm) : Math.max(Math.abs(xMm), Math.abs(yMm)));
}

/** Grounds without an edge: one colour, soft waves, and a texture of single pixels. */
function groundOf(ground: Ground): (x: number, y: number) => number {
  const next = seededNumbers(11);
  if (ground === 'plain') return () => 230;
  if (ground === 'grain') return () => Math.floor(next() * 256);
  return (x, y) => 150 + 70 * Math.sin(x / 90) * Math.cos(y / 70);
}

/**
 * Art that bleeds, with a dark line of `lineMm` whose outer side lies `distanceMm` inside the edge; `openShare` of it is
 * left away from the top left on.
 */
export function framed(
  distanceMm: number,
  lineMm: number,
  ground: Ground = 'plain',
  shape: 'plate' | 'disc' = 'plate',
  openShare = 0,
): Raster {
  const at = groundOf(ground);
  const side = ART_MM * PX;
  return paintRaster(side, side, (x, y): Rgba => {
    const code = at(x, y);
    const inside = insideOf(shape, x, y);
    // Turns round the middle, 0…1: a share of the frame is a share of the turn.
    const turn = Math.atan2(y - side / 2, x - side / 2) / (2 * Math.PI) + 0.5;
    const isLine = inside >= distanceMm && inside < distanceMm + lineMm && turn >= openShare;
    return isLine ? [60, 20, 30, 255] : [code, code, code, 255];
  });
}
