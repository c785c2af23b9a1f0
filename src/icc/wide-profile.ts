import { adaptWhite } from '../colour/bradford.ts';
import { XYZ_D50 } from '../colour/lab.ts';
import { applyMatrix, invertMatrix, multiplyMatrices, scalingMatrix, transpose } from '../colour/matrix3.ts';
import type { Triple } from '../colour/triple.ts';
import type { IccProfile } from './profile.ts';
import { SRGB_MODEL, SRGB_PROFILE } from './srgb-profile.ts';

const fromChromaticity = (x: number, y: number): Triple => [x / y, 1, (1 - x - y) / y];

/** @see Recommendation ITU-R BT.2020-2, table 3 */
const WHITE = fromChromaticity(0.3127, 0.329);
const PRIMARIES = transpose([
  fromChromaticity(0.708, 0.292),
  fromChromaticity(0.17, 0.797),
  fromChromaticity(0.131, 0.046),
]);

const toXyz = multiplyMatrices(PRIMARIES, scalingMatrix(applyMatrix(invertMatrix(PRIMARIES)!, WHITE)));
const matrix = multiplyMatrices(adaptWhite(WHITE, XYZ_D50), toXyz);
const model = { ...SRGB_MODEL, matrix, inverse: invertMatrix(matrix)! };
const everyIntent = { perceptual: model, relative: model, saturation: model };

/**
 * RGB with the primaries of BT.2020 and the curve of sRGB (own choice: thresholds that are given in codes mean the
 * same as in sRGB). Holds what ink on paper can show; at 16 bits no step of it is seen.
 */
export const WIDE_PROFILE: IccProfile = {
  ...SRGB_PROFILE,
  description: 'RGB with the primaries of BT.2020',
  toConnection: everyIntent,
  fromConnection: everyIntent,
};
