import type { PixelTransform } from '../icc/pixel-transform.ts';
import type { IccProfile } from '../icc/profile.ts';
import { SRGB_PROFILE } from '../icc/srgb-profile.ts';
import { makeSrgbTransform } from '../icc/srgb-transform.ts';
import { makeTransform } from '../icc/transform.ts';

const made = new WeakMap<IccProfile, PixelTransform>();

/**
 * From the profile's device colours to sRGB, made once for each profile. Relative colorimetric; where the device's
 * black is lighter than sRGB's (print profiles are tables) with black point compensation, as editing programs do by
 * default (common practice, no source): black art stays black.
 * @throws profile-missing-tag when the profile does not say how its device colours look
 */
export function toSrgbTransform(profile: IccProfile): PixelTransform {
  const transform = made.get(profile) ?? make(profile);
  made.set(profile, transform);
  return transform;
}

function make(profile: IccProfile): PixelTransform {
  if (profile.toConnection?.relative.kind !== 'table') return makeSrgbTransform(profile);
  return makeTransform(profile, SRGB_PROFILE, { intent: 'relative', blackPointCompensation: true }).compile();
}
