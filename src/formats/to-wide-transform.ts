import type { PixelTransform } from '../icc/pixel-transform.ts';
import type { IccProfile } from '../icc/profile.ts';
import { makeTransform } from '../icc/transform.ts';
import { WIDE_PROFILE } from '../icc/wide-profile.ts';

const made = new WeakMap<IccProfile, PixelTransform>();

/**
 * From the profile's device colours to `WIDE_PROFILE`, which clips none of them that is lighter than the profile's black;
 * made once for each profile. Relative colorimetric with black point compensation, as to sRGB: followed by a conversion
 * with compensation, that is the same as one from the device colours themselves. What is darker than the black of ISO
 * 18619, as much black ink over others is, loses its tint.
 * @throws profile-missing-tag when the profile does not say how its device colours look
 */
export function toWideTransform(profile: IccProfile): PixelTransform {
  const options = { intent: 'relative', blackPointCompensation: true } as const;
  const transform = made.get(profile) ?? makeTransform(profile, WIDE_PROFILE, options).compile();
  made.set(profile, transform);
  return transform;
}
