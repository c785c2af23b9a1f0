import type { Raster } from '../src/raster/raster.ts';

/** A mark of two strokes and a ring, of our own, as samples of photographs carry in some form. */
export interface Overlay {
  /** From one mark to the next along its row; rows lie 0.6 of it apart. */
  readonly stepPx: number;
  readonly turnDeg: number;
  /** Gray of 0…255 and opacity of 0…1. */
  readonly gray: number;
  readonly opacity: number;
}

/** The picture with the mark again and again over all of it, a new one. RGB with alpha, 8 bits. */
export function layOverlay(raster: Raster, { stepPx, turnDeg, gray, opacity }: Overlay): Raster {
  const data = raster.data.slice();
  const [cos, sin] = [Math.cos((turnDeg * Math.PI) / 180), Math.sin((turnDeg * Math.PI) / 180)];
  const within = (value: number, size: number) => value - Math.floor(value / size) * size;
  for (let y = 0, at = 0; y < raster.heightPx; y += 1)
    for (let x = 0; x < raster.widthPx; x += 1, at += 4) {
      const u = within(x * cos + y * sin, stepPx) / stepPx;
      const v = within(y * cos - x * sin, 0.6 * stepPx) / stepPx;
      if (!isMark(u, v)) continue;
      const own = data[at + 3]! / 255;
      const alpha = opacity + own * (1 - opacity);
      for (let k = 0; k < 3; k += 1)
        data[at + k] = Math.round((gray * opacity + data[at + k]! * own * (1 - opacity)) / alpha);
      data[at + 3] = Math.round(255 * alpha);
    }
  return { ...raster, data };
}

function isMark(u: number, v: number): boolean {
  const isStroke = Math.abs(u - 0.2 - 0.5 * v) < 0.03 && v > 0.1 && v < 0.45;
  const isFoot = Math.abs(v - 0.42) < 0.03 && u > 0.15 && u < 0.55;
  const isRing = Math.abs(Math.hypot(u - 0.7, v - 0.25) - 0.12) < 0.03;
  return isStroke || isFoot || isRing;
}
