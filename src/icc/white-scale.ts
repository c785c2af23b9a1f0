import { XYZ_D50 } from '../colour/lab.ts';
import type { Triple } from '../colour/triple.ts';
import type { IccProfile, Intent } from './profile.ts';

/**
 * What XYZ relative to the medium is multiplied by, axis by axis, to become absolute: the media white over D50. A
 * display of version 2 states the white of its tube, to which the eye adapts, so D50 stands in, as version 4 demands.
 * @see ICC.1:2022, 6.3 and 9.2.36
 */
export function absoluteScale(profile: IccProfile, intent: Intent): Triple {
  if (intent !== 'absolute' || (profile.majorVersion === 2 && profile.class === 'display')) return [1, 1, 1];
  const [x, y, z] = profile.mediaWhiteXyz;
  return [x / XYZ_D50[0], y / XYZ_D50[1], z / XYZ_D50[2]];
}
