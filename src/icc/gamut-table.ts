import { convertGrid3 } from './convert-grid3.ts';
import { requireForward } from './forward-stages.ts';
import { type GamutJudge, makeGamutJudge } from './gamut.ts';
import { planGrid } from './grid-plan.ts';
import { once } from './once.ts';
import { makePixelGrid } from './pixel-grid.ts';
import type { IccProfile } from './profile.ts';
import { profileError } from './profile-error.ts';
import { measureProfileNoise } from './profile-noise.ts';
import { SRGB_PROFILE } from './srgb-profile.ts';

/** The unit in which pixels are given their difference: 1/512 dE00, so that 16 bits reach to 128. */
export const UNITS_PER_DELTA_E = 512;

/** A check finer than this would judge the tables of profiles and not printers: measured over five press profiles. */
const LOWEST_LIMIT = 3;

/** What a printing condition loses of the colours of a space of three channels, ready for whole pictures. */
export interface GamutTable extends GamutJudge {
  /** dE00 above which a colour counts as out of gamut: 3, or the condition's own noise where that is more. */
  readonly limit: number;
  /** As `measureProfileNoise` says. */
  readonly noise: number;
  /**
   * The difference of every pixel in 1/512 dE00, one number each. Interpolated between the colours of a table, so
   * `measure` has the last word on a single colour. Samples behind the first three of a pixel are passed over.
   */
  measure8(source: Uint8Array, target: Uint16Array, pixels: number, sourceStride?: number): void;
  measure16(source: Uint16Array, target: Uint16Array, pixels: number, sourceStride?: number): void;
}

/**
 * The table of a printing condition for pictures in `source`, to be made once and kept.
 * @throws profile-missing-tag when a profile does not describe the directions that are needed
 * @throws profile-unsupported when the source has not three channels
 */
export function makeGamutTable(condition: IccProfile, source: IccProfile = SRGB_PROFILE): GamutTable {
  if (source.channels !== 3)
    throw profileError(
      'profile-unsupported',
      'header',
      `expected a picture of 3 channels, received ${source.channels}`,
    );
  const judge = makeGamutJudge(condition, source);
  const noise = measureProfileNoise(condition);
  const tabulate = (values: Float64Array): void => {
    values[0] = (judge.measure(values) * UNITS_PER_DELTA_E) / 65535;
  };
  const plan = planGrid(requireForward(source, 'relative'), [tabulate], 3, 1);
  const grid8 = once(() => makePixelGrid(plan, 255, 65535));
  const grid16 = once(() => makePixelGrid(plan, 65535));
  return {
    ...judge,
    noise,
    limit: Math.max(LOWEST_LIMIT, noise),
    measure8: (pixels8, target, pixels, sourceStride = 3) =>
      convertGrid3(pixels8, target, pixels, sourceStride, 1, grid8()),
    measure16: (pixels16, target, pixels, sourceStride = 3) =>
      convertGrid3(pixels16, target, pixels, sourceStride, 1, grid16()),
  };
}
