import { adaptWhite } from '../../src/colour/bradford.ts';
import { XYZ_D50 } from '../../src/colour/lab.ts';
import {
  applyMatrix,
  invertMatrix,
  multiplyMatrices,
  scalingMatrix,
  transpose,
} from '../../src/colour/matrix3.ts';
import type { IccProfile } from '../../src/icc/profile.ts';
import { SRGB_MODEL, SRGB_PROFILE } from '../../src/icc/srgb-profile.ts';

/** RGB with the primaries of P3 and the curve of sRGB. @see SMPTE EG 432-1 (primaries), IEC 61966-2-1 (white, curve) */
export function wideProfile(): IccProfile {
  const whole = (x: number, y: number) => [x / y, 1, (1 - x - y) / y] as const;
  const white = whole(0.3127, 0.329);
  const primaries = transpose([whole(0.68, 0.32), whole(0.265, 0.69), whole(0.15, 0.06)]);
  const scaled = multiplyMatrices(primaries, scalingMatrix(applyMatrix(invertMatrix(primaries)!, white)));
  const matrix = multiplyMatrices(adaptWhite(white, XYZ_D50), scaled);
  const model = { ...SRGB_MODEL, matrix, inverse: invertMatrix(matrix)! };
  const everyIntent = { perceptual: model, relative: model, saturation: model };
  return { ...SRGB_PROFILE, description: 'wide', toConnection: everyIntent, fromConnection: everyIntent };
}
