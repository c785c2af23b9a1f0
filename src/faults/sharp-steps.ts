import type { LumaLines } from '../raster/luma-lines.ts';

/** Codes that a step has, and that its two sides may vary by (own choice). */
const LEAST_STEP = 24;
const FLAT = 1;
const LEAST_STEPS = 16;

/**
 * Whether the lines step from one even tone to another within one pixel between them, in 16 places or more: enlarging by
 * interpolation spreads every step over more, so this art was not enlarged, or not all of it. For pictures whose pixels
 * are not repeated: there every step is sharp.
 */
export function hasSharpSteps({ length, values }: LumaLines): boolean {
  let steps = 0;
  for (const line of values)
    for (let i = 0; i + 4 < length; i += 1) {
      // The rarest first: most places have no step at all.
      const isStep =
        Math.abs(line[i + 3]! - line[i + 1]!) >= LEAST_STEP &&
        Math.abs(line[i + 1]! - line[i]!) <= FLAT &&
        Math.abs(line[i + 4]! - line[i + 3]!) <= FLAT;
      if (isStep) steps += 1;
    }
  return steps >= LEAST_STEPS;
}
