import type { LightnessLines } from '../raster/lightness-lines.ts';

/** Steps above this belong to the picture, L* (own choice): counted in full a few outlines would drown everything else. */
export const STEP_CAP = 12;
/** Where the first number of a profile lies: between the middles of pixels 1 and 2, pixels counted from the middle of pixel 0. */
export const FIRST_PLACE = 1.5;

/**
 * How far the lightness steps between pixel i + 1 and i + 2 beyond what it changes on both sides of that, L*, over all
 * lines. Slopes do not count, edges count up to `STEP_CAP`. Three numbers shorter than the lines.
 */
export function stepProfile({ length, values }: LightnessLines): Float64Array {
  const profile = new Float64Array(Math.max(0, length - 3));
  for (const line of values)
    for (let i = 0; i < profile.length; i += 1) {
      const step = Math.abs(1.5 * (line[i + 2]! - line[i + 1]!) - 0.5 * (line[i + 3]! - line[i]!));
      profile[i]! += Math.min(step, STEP_CAP);
    }
  for (let i = 0; i < profile.length; i += 1) profile[i]! /= values.length;
  return profile;
}
