import type { LumaLines } from '../raster/luma-lines.ts';
import { makePeriodogram } from './periodogram.ts';

/** Factors that are looked for (own choice): below nothing is told from noise, beyond art is soft to every eye. */
export const LEAST_FACTOR = 1.15;
export const MOST_FACTOR = 8;
/** Over the ground, whose median is 1: noise hardly ever exceeds 4. */
const LEAST_STRENGTH = 4;
const MOST_PEAKS = 5;
/** Curvature above this belongs to outlines, codes (own choice): counted in full a few would drown everything else. */
const CURVATURE_CAP = 24;
const LEAST_FREQUENCY = 0.05;
/**
 * Blocks of 8 (ITU-T T.81) whose finest waves were dropped, 6 of 8 being left, look as if they had been enlarged by this.
 * They have lines at 1/8 and 3/8 too, where such an enlarging has none: its lines are at multiples of 1/4.
 */
const FACTOR_OF_BLOCKS = 8 / 6;
const BLOCK_FREQUENCIES = [1 / 8, 3 / 8];

/**
 * Factors by which the lines may have been enlarged, strongest sign first. The second difference of a picture enlarged by f
 * with an interpolating kernel varies with the period f (Gallagher, "Detection of linear and cubic interpolation in JPEG
 * compressed images", CRV 2005): a line of its spectrum at 1/f, or what sampling makes of that and of its double. Only
 * candidates: patterns and blocks of compression have periods too.
 */
export function findEnlargingPeriods(lines: LumaLines): number[] {
  const { strength, size } = makePeriodogram(curvatureProfile(lines));
  const peaks: { frequency: number; height: number }[] = [];
  for (let i = Math.ceil(LEAST_FREQUENCY * size); i <= size / 2; i += 1) {
    const [before, height, after] = [strength[i - 1]!, strength[i]!, strength[i + 1] ?? strength[i - 1]!];
    if (height < LEAST_STRENGTH || height < before || height < after) continue;
    const bend = before - 2 * height + after;
    const shift = bend === 0 ? 0 : (before - after) / (2 * bend);
    peaks.push({ frequency: (i + shift) / size, height });
  }
  peaks.sort((a, b) => b.height - a.height);
  const hasBlocks = BLOCK_FREQUENCIES.some((wanted) =>
    peaks.some(({ frequency }) => isSame(frequency, wanted)),
  );
  const isOfBlocks = (factor: number) => hasBlocks && isSame(factor, FACTOR_OF_BLOCKS);
  const factors: number[] = [];
  for (const { frequency } of peaks.slice(0, MOST_PEAKS))
    for (const factor of [
      1 / frequency,
      1 / (1 - frequency),
      2 / (1 - frequency),
      2 / (1 + frequency),
      2 / frequency,
    ])
      if (
        factor >= LEAST_FACTOR &&
        factor <= MOST_FACTOR &&
        !isOfBlocks(factor) &&
        !factors.some((one) => isSame(one, factor))
      )
        factors.push(factor);
  return factors;
}

function isSame(a: number, b: number): boolean {
  return Math.abs(a / b - 1) < 0.002;
}

function curvatureProfile({ length, values }: LumaLines): Float64Array {
  const profile = new Float64Array(Math.max(0, length - 2));
  const counts = new Float64Array(profile.length);
  for (const line of values)
    for (let i = 0; i < profile.length; i += 1) {
      const curvature = Math.abs(line[i]! - 2 * line[i + 1]! + line[i + 2]!);
      if (Number.isNaN(curvature)) continue;
      profile[i]! += Math.min(curvature, CURVATURE_CAP);
      counts[i]! += 1;
    }
  for (let i = 0; i < profile.length; i += 1) profile[i]! /= Math.max(1, counts[i]!);
  return profile;
}
