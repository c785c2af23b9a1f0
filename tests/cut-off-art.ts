import type { Raster } from '../src/raster/raster.ts';
import { CLEAR, paintRaster, type Rgba } from './pictures.ts';

/** Alpha of 0…1 at a point of a canvas of 300 x 300; more or less is cut. */
export type AlphaAt = (x: number, y: number) => number;

const SIDE = 300;
/** 5 px a millimetre, if printed `widthOf` wide. */
const PX_PER_MM = 5;

/** Terracotta with this alpha, turned by so many quarters. */
export function paintAlpha(alphaAt: AlphaAt, turns = 0): Raster {
  return paintRaster(SIDE, SIDE, (x, y): Rgba => {
    let [u, v] = [x + 0.5, y + 0.5];
    for (let i = 0; i < turns; i += 1) [u, v] = [v, SIDE - u];
    const alpha = Math.round(255 * Math.min(1, Math.max(0, alphaAt(u, v))));
    return alpha === 0 ? CLEAR : [200, 80, 40, alpha];
  });
}

/** Print width at which what is visible has 5 px a millimetre. */
export function widthMmOf({ widthPx, heightPx, data }: Raster): number {
  let [left, right] = [widthPx, 0];
  for (let i = 0; i < widthPx * heightPx; i += 1)
    if (data[4 * i + 3]! > 0) [left, right] = [Math.min(left, i % widthPx), Math.max(right, i % widthPx)];
  return (right + 1 - left) / PX_PER_MM;
}

/** A disc of which the lower end of the canvas cuts off so much. */
export const cutDisc =
  (missingMm: number, radiusMm = 24): AlphaAt =>
  (x, y) =>
    radiusMm * PX_PER_MM - Math.hypot(x - 150, y - (SIDE - (radiusMm - missingMm) * PX_PER_MM)) + 0.5;

/** A glow round a disc that ends with so much of its alpha at the lower end of the canvas. */
export const cutGlow =
  (atEnd: number): AlphaAt =>
  (x, y) => {
    const far = Math.hypot(x - 150, y - 200) - 40;
    return far < 0 ? 1 : 1 - far / (60 / (1 - atEnd));
  };

/** A wedge whose sides meet the lower end of the canvas at so many degrees off the right angle. */
export const cutWedge =
  (degrees: number): AlphaAt =>
  (x, y) =>
    y < 60 ? 0 : 60 + (SIDE - y) * Math.tan((degrees * Math.PI) / 180) - Math.abs(x - 150) + 0.5;
