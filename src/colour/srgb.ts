import { adaptWhite } from './bradford.ts';
import { XYZ_D50 } from './lab.ts';
import {
  applyMatrix,
  invertMatrix,
  type Matrix3,
  multiplyMatrices,
  scalingMatrix,
  transpose,
} from './matrix3.ts';
import type { Triple } from './triple.ts';

/** The parameters of the sRGB curve: ((x + 0.055) / 1.055)^2.4, and x / 12.92 up to 0.04045. @see IEC 61966-2-1:1999, clause 5 */
export const SRGB_CURVE = { gamma: 2.4, offset: 0.055, slope: 12.92, linearTo: 0.04045 } as const;

/** Linear light 0…1 of an sRGB sample 0…1; values outside keep their sign. */
export function decodeSrgb(sample: number): number {
  if (sample < 0) return -decodeSrgb(-sample);
  const { gamma, offset, slope, linearTo } = SRGB_CURVE;
  return sample <= linearTo ? sample / slope : ((sample + offset) / (1 + offset)) ** gamma;
}

/** sRGB sample 0…1 of linear light 0…1; values outside keep their sign. */
export function encodeSrgb(light: number): number {
  if (light < 0) return -encodeSrgb(-light);
  const { gamma, offset, slope, linearTo } = SRGB_CURVE;
  return light <= linearTo / slope ? light * slope : (1 + offset) * light ** (1 / gamma) - offset;
}

/** Chromaticities of the Rec. 709 primaries and of the D65 white that sRGB takes over. @see IEC 61966-2-1:1999, clause 4 */
const RED = whole(0.64, 0.33);
const GREEN = whole(0.3, 0.6);
const BLUE = whole(0.15, 0.06);
export const XYZ_D65: Triple = whole(0.3127, 0.329);

/** Linear sRGB (0…1) to XYZ with the ICC D50 white, adapted by linear Bradford. */
export const SRGB_TO_XYZ_D50: Matrix3 = multiplyMatrices(
  adaptWhite(XYZ_D65, XYZ_D50),
  scaleToWhite(transpose([RED, GREEN, BLUE]), XYZ_D65),
);

/** Inverse of `SRGB_TO_XYZ_D50`; results outside 0…1 are colours that sRGB cannot hold. */
export const XYZ_D50_TO_SRGB: Matrix3 = invertMatrix(SRGB_TO_XYZ_D50)!;

/** XYZ with Y = 1 of a chromaticity. */
function whole(x: number, y: number): Triple {
  return [x / y, 1, (1 - x - y) / y];
}

/** Scales the columns so that their sum is the white. */
function scaleToWhite(primaries: Matrix3, white: Triple): Matrix3 {
  return multiplyMatrices(primaries, scalingMatrix(applyMatrix(invertMatrix(primaries)!, white)));
}
