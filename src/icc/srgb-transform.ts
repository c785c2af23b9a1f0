import { labCube } from '../colour/lab.ts';
import { multiplyMatrices } from '../colour/matrix3.ts';
import { encodeSrgb } from '../colour/srgb.ts';
import { compileGrayTransform } from './convert-gray.ts';
import { compileMatrixTransform } from './convert-matrix.ts';
import { evaluateCurve } from './curve.ts';
import type { PixelTransform } from './pixel-transform.ts';
import type { IccProfile } from './profile.ts';
import { profileError } from './profile-error.ts';
import { SRGB_MODEL } from './srgb-profile.ts';

/**
 * The transform of pixels from the profile's device space to sRGB, relative colorimetric without black point
 * compensation: white becomes white, colours that sRGB cannot hold are clipped. A gray profile with a curve gives one
 * channel (red, green and blue would be equal), everything else three.
 * @throws profile-missing-tag when the profile does not say how its device colours look
 */
export function makeSrgbTransform(profile: IccProfile): PixelTransform {
  const model = profile.toConnection?.relative;
  if (!model)
    throw profileError(
      'profile-missing-tag',
      'tag table',
      'expected a table from device to colour, received none',
    );
  if (model.kind === 'gray') {
    const luminance =
      profile.connection === 'xyz'
        ? (value: number) => evaluateCurve(model.curve, value)
        : (value: number) => labCube((100 * evaluateCurve(model.curve, value) + 16) / 116);
    return compileGrayTransform((value) => encodeSrgb(luminance(value)));
  }
  if (model.kind === 'matrix')
    return compileMatrixTransform(
      model.curves,
      multiplyMatrices(SRGB_MODEL.inverse, model.matrix),
      SRGB_MODEL.curves,
    );
  throw profileError(
    'profile-unsupported',
    'tag table',
    'expected a matrix or a gray curve, received a table',
  );
}
