import { XYZ_D50 } from '../colour/lab.ts';
import { SRGB_CURVE, SRGB_TO_XYZ_D50, XYZ_D50_TO_SRGB } from '../colour/srgb.ts';
import type { ParametricCurve } from './curve.ts';
import type { ColourModel, IccProfile } from './profile.ts';

const { gamma, offset, slope, linearTo } = SRGB_CURVE;
const curve: ParametricCurve = {
  kind: 'parametric',
  gamma,
  a: 1 / (1 + offset),
  b: offset / (1 + offset),
  c: 1 / slope,
  d: linearTo,
  e: 0,
  f: 0,
};

/** The matrix and the curves of sRGB, unrounded. */
export const SRGB_MODEL = {
  kind: 'matrix',
  curves: [curve, curve, curve],
  matrix: SRGB_TO_XYZ_D50,
  inverse: XYZ_D50_TO_SRGB,
} as const satisfies ColourModel;

const everyIntent = { perceptual: SRGB_MODEL, relative: SRGB_MODEL, saturation: SRGB_MODEL };

/** sRGB as a profile, for pictures that carry none. @see IEC 61966-2-1:1999 */
export const SRGB_PROFILE: IccProfile = {
  version: '4.4',
  majorVersion: 4,
  class: 'display',
  space: 'rgb',
  channels: 3,
  connection: 'xyz',
  description: 'sRGB IEC 61966-2-1',
  mediaWhiteXyz: XYZ_D50,
  adaptation: null,
  toConnection: everyIntent,
  fromConnection: everyIntent,
};

const grayModel: ColourModel = { kind: 'gray', curve };

/** Gray with the sRGB curve: the colours of sRGB whose three samples are equal. */
export const SRGB_GRAY_PROFILE: IccProfile = {
  ...SRGB_PROFILE,
  space: 'gray',
  channels: 1,
  description: 'Gray with the curve of sRGB IEC 61966-2-1',
  toConnection: { perceptual: grayModel, relative: grayModel, saturation: grayModel },
  fromConnection: { perceptual: grayModel, relative: grayModel, saturation: grayModel },
};
