import type { Raster } from '../src/raster/raster.ts';
import { paintRaster, type Rgba } from './pictures.ts';

export type Colour = readonly [number, number, number];

export const BACKGROUNDS: Readonly<Record<string, Colour>> = {
  white: [255, 255, 255],
  black: [0, 0, 0],
  green: [20, 230, 60],
  blue: [30, 60, 220],
};

/** How a subject was cut out of a picture. */
export interface CutOut {
  /** The old background. */
  readonly background: Colour;
  /** How much of the background that the soft edge had is still in its colour: 0 is clean, 1 all of it. */
  readonly left: number;
  /** Over so many pixels the subject's edge goes from full to nothing. */
  readonly softPx: number;
  /** Alpha is the true coverage times this, at most full: above 1 the background is in opaque pixels too. */
  readonly loose?: number;
  readonly subject?: (x: number, y: number) => Colour;
  readonly shape?: (x: number, y: number) => number;
}

export const ORANGE: Colour = [220, 130, 40];
export const plain = (): Colour => ORANGE;
/** Shading from top to bottom and stripes of leaves. */
export const patterned = (x: number, y: number): Colour => {
  const stripe = (x + 2 * y) % 40 < 20 ? 40 : 0;
  return [60 + stripe, 190 - y / 4, 70 + stripe];
};
/** Signed distance into the shape on a canvas of 300 px, in px. */
export const disc = (x: number, y: number): number => 110 - Math.hypot(x - 150, y - 150);
export const flower = (x: number, y: number): number => {
  const angle = Math.atan2(y - 150, x - 150);
  return 90 + 25 * Math.cos(5 * angle) - Math.hypot(x - 150, y - 150);
};

/** A subject cut out of its background: 300 x 300 px. */
export function cutOut({
  background,
  left,
  softPx,
  loose = 1,
  subject = plain,
  shape = disc,
}: CutOut): Raster {
  return paintRaster(300, 300, (x, y): Rgba => {
    const coverage = Math.min(1, Math.max(0, shape(x + 0.5, y + 0.5) / softPx + 0.5));
    const own = subject(x, y);
    const [r, g, b] = own.map((sample, k) =>
      Math.round(sample + left * (1 - coverage) * (background[k]! - sample)),
    ) as [number, number, number];
    const alpha = Math.round(255 * Math.min(1, coverage * loose));
    return alpha === 0 ? [0, 0, 0, 0] : [r, g, b, alpha];
  });
}

/** A disc that has a drawn outline of one colour, with clean soft edges. */
export function outlined(widthPx: number, colour: Colour, softPx = 1): Raster {
  return cutOut({
    background: colour,
    left: 0,
    softPx,
    subject: (x, y) => (disc(x + 0.5, y + 0.5) < widthPx ? colour : ORANGE),
  });
}

/** A clean disc with a glow or shadow of one colour under it, which fades over `reachPx`. */
export function glowing(reachPx: number, most: number, colour: Colour, shiftPx = 0): Raster {
  return paintRaster(300, 300, (x, y): Rgba => {
    const coverage = Math.min(1, Math.max(0, disc(x + 0.5, y + 0.5) + 0.5));
    const outside = -disc(x + 0.5 - shiftPx, y + 0.5 - shiftPx);
    const under = most * Math.min(1, Math.max(0, 1 - outside / reachPx));
    const alpha = coverage + (1 - coverage) * under;
    if (Math.round(255 * alpha) === 0) return [0, 0, 0, 0];
    const mixed = ORANGE.map((sample, k) =>
      Math.round((sample * coverage + colour[k]! * (1 - coverage) * under) / alpha),
    ) as [number, number, number];
    return [...mixed, Math.round(255 * alpha)];
  });
}
