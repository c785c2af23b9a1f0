import { convertGrid3 } from './convert-grid3.ts';
import { requireForward } from './forward-stages.ts';
import { type GamutJudge, makeGamutJudge } from './gamut.ts';
import { planAxes } from './grid-axes.ts';
import { once } from './once.ts';
import { makePixelGrid } from './pixel-grid.ts';
import type { IccProfile } from './profile.ts';
import { profileError } from './profile-error.ts';
import { measureProfileNoise } from './profile-noise.ts';
import { type PlainTest, planSparseGrid } from './sparse-grid.ts';
import { SRGB_PROFILE } from './srgb-profile.ts';

/** The unit in which pixels are given their difference: 1/512 dE00, so that 16 bits reach to 128. */
export const UNITS_PER_DELTA_E = 512;

/** A check finer than this would judge the tables of profiles and not printers: measured over five press profiles. */
const LOWEST_LIMIT = 3;

/**
 * Shares of the limit: in a cell whose corners all lie below the one or above the other no colour crosses the limit, nor,
 * where the cell is coarse, 5 dE00 if the limit is 3. Derived in the test, which evaluates every node.
 */
const PLAIN = { coarse: { most: 0.7, least: 2 }, fine: { most: 0.9, least: 1.15 } } as const;

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

/** What makes a table costly: may be measured once and kept from run to run. */
export interface GamutGrid {
  readonly noise: number;
  /** The differences at the nodes of the table, in 1/512 dE00. */
  readonly differences: Uint16Array;
}

/** The costly part of the table of a condition for pictures in `source`. @throws as makeGamutTable */
export function measureGamutGrid(condition: IccProfile, source: IccProfile = SRGB_PROFILE): GamutGrid {
  const { measure } = makeGamutJudge(condition, source);
  const tabulate = (values: Float64Array): void => {
    values[0] = (measure(values) * UNITS_PER_DELTA_E) / 65535;
  };
  const noise = measureProfileNoise(condition);
  const limit = Math.max(LOWEST_LIMIT, noise) * UNITS_PER_DELTA_E;
  const isPlain: PlainTest = (least, most, level) =>
    most * 65535 <= PLAIN[level].most * limit || least * 65535 >= PLAIN[level].least * limit;
  const { values } = planSparseGrid(requireForward(source, 'relative'), tabulate, 1, isPlain);
  // Loops, because `from` with a function boxes every number.
  const differences = new Uint16Array(values.length);
  for (let i = 0; i < values.length; i++) differences[i] = Math.round(values[i]! * 65535);
  return { noise, differences };
}

/**
 * The table of a printing condition for pictures in `source`, to be made once and kept. `grid` is measured anew where
 * it is not given.
 * @throws profile-missing-tag when a profile does not describe the directions that are needed
 * @throws profile-unsupported when the source has not three channels
 */
export function makeGamutTable(
  condition: IccProfile,
  source: IccProfile = SRGB_PROFILE,
  grid?: GamutGrid,
): GamutTable {
  if (source.channels !== 3)
    throw profileError(
      'profile-unsupported',
      'header',
      `expected a picture of 3 channels, received ${source.channels}`,
    );
  const { noise, differences } = grid ?? measureGamutGrid(condition, source);
  const axes = planAxes(requireForward(source, 'relative'), 3);
  const values = new Float32Array(differences.length);
  for (let i = 0; i < values.length; i++) values[i] = differences[i]! / 65535;
  const plan = {
    sizes: axes.map(({ size }) => size),
    shapes: axes.map(({ placeOf }) => placeOf),
    values,
    outputs: 1,
  };
  const grid8 = once(() => makePixelGrid(plan, 255, 65535));
  const grid16 = once(() => makePixelGrid(plan, 65535));
  return {
    ...makeGamutJudge(condition, source),
    noise,
    limit: Math.max(LOWEST_LIMIT, noise),
    measure8: (pixels8, target, pixels, sourceStride = 3) =>
      convertGrid3(pixels8, target, pixels, sourceStride, 1, grid8()),
    measure16: (pixels16, target, pixels, sourceStride = 3) =>
      convertGrid3(pixels16, target, pixels, sourceStride, 1, grid16()),
  };
}
