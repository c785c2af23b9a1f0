import { measureDeltaE2000 } from '../colour/delta-e-2000.ts';
import { makeFromLabStages, makeToLabStages } from './lab-d50.ts';
import type { IccProfile } from './profile.ts';
import { STAGE_CHANNELS } from './stage.ts';

/** The percentile of so many lies within 3 % of that of 20,000, on two press profiles; the tables wait for it. */
const COLOURS = 1500;
/** Colours with more ink in all are not made by anybody, and tables are careless there. Common practice, no source. */
const MOST_INK = 2.8;

/**
 * The dE00 that 99 of 100 device colours stay below on the way to Lab, back through the inverse table, and to Lab
 * again, relative colorimetric: what the profile's own tables lose. 0 for profiles without tables. The colours are
 * spread evenly over the device space (ink: up to 280 % in all) and always the same.
 * @throws profile-missing-tag when the profile lacks a direction
 */
export function measureProfileNoise(profile: IccProfile): number {
  const toLab = makeToLabStages(profile, 'relative');
  const fromLab = makeFromLabStages(profile, 'relative');
  const values = new Float64Array(STAGE_CHANNELS);
  const losses: number[] = [];
  for (let index = 1; losses.length < COLOURS; index++) {
    let sum = 0;
    for (let k = 0; k < profile.channels; k++) {
      values[k] = radicalInverse(index, PRIMES[k]!);
      sum += values[k]!;
    }
    if (profile.space !== 'rgb' && profile.channels > 3 && sum > MOST_INK) continue;
    for (const stage of toLab) stage(values);
    const [l = 0, a = 0, b = 0] = values;
    for (const stage of fromLab) stage(values);
    for (const stage of toLab) stage(values);
    losses.push(measureDeltaE2000(l, a, b, values[0]!, values[1]!, values[2]!));
  }
  losses.sort((one, other) => one - other);
  return losses[Math.floor(0.99 * COLOURS)]!;
}

const PRIMES = [2, 3, 5, 7, 11, 13, 17, 19, 23, 29, 31, 37, 41, 43, 47] as const;

/** Digits of the index mirrored at the point: the Halton sequence fills a space evenly and needs no chance. */
function radicalInverse(index: number, base: number): number {
  let inverse = 0;
  let weight = 1 / base;
  for (let rest = index; rest > 0; rest = Math.floor(rest / base)) {
    inverse += (rest % base) * weight;
    weight /= base;
  }
  return inverse;
}
