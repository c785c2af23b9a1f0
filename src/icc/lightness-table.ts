import { findAdjustment, type TransformOptions } from './adjustment.ts';
import { makeBackwardStages } from './backward-stages.ts';
import { convertGrid3 } from './convert-grid3.ts';
import { makeForwardStages, requireForward } from './forward-stages.ts';
import { makeLinkStages } from './link-stages.ts';
import { once } from './once.ts';
import { makePixelGrid } from './pixel-grid.ts';
import type { IccProfile } from './profile.ts';
import { profileError } from './profile-error.ts';
import { type PlainTest, planSparseGrid } from './sparse-grid.ts';
import { STAGE_CHANNELS } from './stage.ts';

/** The unit in which pixels are given their lightness: 1/512 L*, so that 16 bits reach to 128. */
export const UNITS_PER_LIGHTNESS = 512;

/** Of colours lighter than the printed black by more L* than this nobody asks exactly: the table is coarser there. */
const DARK_ABOVE_BLACK = 16;

/** Steps in which a channel's bound is looked for. */
const BOUND_STEPS = 255;

/** L* before and after a conversion. */
export interface LightnessTable {
  /** Printed L* of the darkest colour of the source; relative to the paper. */
  readonly printedBlack: number;
  /**
   * The most that each channel of a colour can have, 0…1, that is no lighter than this L*: no channel takes light away.
   */
  findBounds(lightness: number): readonly [number, number, number];
  /** L* of one colour, 0…1 each: in the source, and in the print. */
  measure(device: ArrayLike<number>): { readonly source: number; readonly printed: number };
  /**
   * The same of every pixel: two numbers each, in 1/512 L*, interpolated: of colours up to 16 L* above the printed black
   * within 0.1 L* in the source and 0.5 in the print, of lighter ones within 1. Samples behind the first three of a pixel are passed over.
   */
  measure8(source: Uint8Array, target: Uint16Array, pixels: number, sourceStride?: number): void;
  measure16(source: Uint16Array, target: Uint16Array, pixels: number, sourceStride?: number): void;
}

/**
 * The table of a printing condition for pictures in `source` that are converted so, to be made once and kept.
 * @throws profile-missing-tag when a profile does not describe the directions that are needed
 * @throws profile-unsupported when the source has not three channels
 */
export function makeLightnessTable(
  condition: IccProfile,
  source: IccProfile,
  options: TransformOptions,
): LightnessTable {
  if (source.channels !== 3)
    throw profileError(
      'profile-unsupported',
      'header',
      `expected a picture of 3 channels, received ${source.channels}`,
    );
  const toLab = [...makeForwardStages(source, 'relative'), ...makeLinkStages(source.connection, 'lab', null)];
  const print = [
    ...makeLinkStages('lab', condition.connection, findAdjustment(source, condition, options)),
    ...makeBackwardStages(condition, options.intent, 'clipped'),
    ...makeForwardStages(condition, 'relative'),
    ...makeLinkStages(condition.connection, 'lab', null),
  ];
  const convert = (values: Float64Array): number => {
    for (const stage of toLab) stage(values);
    const lightness = values[0]!;
    for (const stage of print) stage(values);
    return lightness;
  };
  const tabulate = (values: Float64Array): void => {
    const lightness = convert(values);
    values[1] = (values[0]! * UNITS_PER_LIGHTNESS) / 65535;
    values[0] = (lightness * UNITS_PER_LIGHTNESS) / 65535;
  };
  const measure = (device: ArrayLike<number>) => {
    const values = new Float64Array(STAGE_CHANNELS);
    for (let i = 0; i < 3; i++) values[i] = device[i]!;
    return { source: convert(values), printed: values[0]! };
  };
  const findBound = (channel: 0 | 1 | 2, lightness: number): number => {
    const device = [0, 0, 0];
    for (let step = 0; step <= BOUND_STEPS; step++) {
      device[channel] = step / BOUND_STEPS;
      if (measure(device).source > lightness) return device[channel];
    }
    return 1;
  };
  const printedBlack = measure([0, 0, 0]).printed;
  const darkTo = ((printedBlack + DARK_ABOVE_BLACK) * UNITS_PER_LIGHTNESS) / 65535;
  const isLight: PlainTest = (least) => least > darkTo;
  const plan = once(() => planSparseGrid(requireForward(source, 'relative'), tabulate, 2, isLight));
  const grid8 = once(() => makePixelGrid(plan(), 255, 65535));
  const grid16 = once(() => makePixelGrid(plan(), 65535));
  return {
    printedBlack,
    measure,
    findBounds: (lightness) => [findBound(0, lightness), findBound(1, lightness), findBound(2, lightness)],
    measure8: (pixels8, target, pixels, sourceStride = 3) =>
      convertGrid3(pixels8, target, pixels, sourceStride, 2, grid8()),
    measure16: (pixels16, target, pixels, sourceStride = 3) =>
      convertGrid3(pixels16, target, pixels, sourceStride, 2, grid16()),
  };
}
