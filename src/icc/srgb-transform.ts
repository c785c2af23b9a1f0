import type { PixelTransform } from './pixel-transform.ts';
import type { IccProfile } from './profile.ts';
import { SRGB_GRAY_PROFILE, SRGB_PROFILE } from './srgb-profile.ts';
import { makeTransform } from './transform.ts';

/**
 * The transform of pixels from the profile's device space to sRGB, relative colorimetric without black point
 * compensation: white becomes white, colours that sRGB cannot hold are clipped. A gray profile with a curve gives one
 * channel (red, green and blue would be equal), everything else three.
 * @throws profile-missing-tag when the profile does not say how its device colours look
 */
export function makeSrgbTransform(profile: IccProfile): PixelTransform {
  const isNeutral = profile.toConnection?.relative.kind === 'gray';
  const target = isNeutral ? SRGB_GRAY_PROFILE : SRGB_PROFILE;
  return makeTransform(profile, target, { intent: 'relative', blackPointCompensation: false }).compile();
}
