import { labCube } from '../src/colour/lab.ts';
import { encodeSrgb } from '../src/colour/srgb.ts';
import type { Raster } from '../src/raster/raster.ts';
import { paintRaster, type Rgba, seededNumbers } from './pictures.ts';

/** Art of this side at this many pixels a millimetre. */
export const GRADED_MM = 60;
const PX = 10;

export interface Gradient {
  /** Tones differ by so much, L*; 0 for as many as 8 bits hold. */
  readonly step: number;
  /** Each lasts so long. */
  readonly bandMm: number;
  /** Across which way; null for rings round the middle. */
  readonly degrees: number | null;
  /** Colour that the tone is multiplied by. */
  readonly tint?: readonly [number, number, number];
  /** Noise of so many codes, as dither. */
  readonly noise?: number;
}

/** Code of 0…255 of a gray of L*, not rounded. */
const codeOf = (lightness: number) => 255 * encodeSrgb(labCube((lightness + 16) / 116));

/** A gradient up and down between L* 20 and 85, at the slope of step / bandMm, in tones or smooth. */
export function graded(
  { step, bandMm, degrees, tint = [1, 1, 1], noise = 0 }: Gradient,
  slope = step / bandMm,
): Raster {
  const side = GRADED_MM * PX;
  const next = seededNumbers(6);
  const [cos, sin] = [Math.cos(((degrees ?? 0) * Math.PI) / 180), Math.sin(((degrees ?? 0) * Math.PI) / 180)];
  return paintRaster(side, side, (x, y): Rgba => {
    const [dx, dy] = [(x + 0.5) / PX - GRADED_MM / 2, (y + 0.5) / PX - GRADED_MM / 2];
    const along = degrees === null ? Math.hypot(dx, dy) : 50 + dx * cos + dy * sin;
    // There and back between the ends.
    const way = (along * slope) % 130;
    const smooth = way < 65 ? way : 130 - way;
    const lightness = 20 + (step === 0 ? smooth : step * Math.floor(smooth / step));
    const code = codeOf(lightness) + (next() - 0.5) * noise;
    const sample = (share: number) => Math.max(0, Math.min(255, Math.round(code * share)));
    return [sample(tint[0]), sample(tint[1]), sample(tint[2]), 255];
  });
}
