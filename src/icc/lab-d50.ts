import type { Triple } from '../colour/triple.ts';
import { makeBackwardStages } from './backward-stages.ts';
import { makeForwardStages } from './forward-stages.ts';
import { makeLinkStages, scaleAdjustment } from './link-stages.ts';
import type { IccProfile, Intent } from './profile.ts';
import { runStages, type Stage } from './stage.ts';
import { absoluteScale } from './white-scale.ts';

export interface IntentOption {
  readonly intent: Intent;
}

/**
 * L*a*b* (D50) of a device colour, in double precision: relative to the media white, or absolute for that intent.
 * Device values are 0…1 (ink: 1 is full ink) and are clipped to it; those of a Lab or XYZ device space are in its
 * own units. @throws profile-missing-tag when the profile does not describe this direction
 */
export function toLabD50(profile: IccProfile, device: readonly number[], { intent }: IntentOption): Triple {
  const [l = 0, a = 0, b = 0] = runStages(makeToLabStages(profile, intent), device, 3);
  return [l, a, b];
}

/**
 * Device colour, 0…1 each, that the profile gives for an L*a*b* (D50), in double precision. What the tables or the
 * device cannot hold is clipped. @throws profile-missing-tag when the profile does not describe this direction
 */
export function fromLabD50(profile: IccProfile, labD50: Triple, { intent }: IntentOption): number[] {
  return runStages(makeFromLabStages(profile, intent), labD50, profile.channels);
}

/** The stages of `toLabD50`. */
export function makeToLabStages(profile: IccProfile, intent: Intent): Stage[] {
  const adjustment = scaleAdjustment(absoluteScale(profile, intent));
  return [...makeForwardStages(profile, intent), ...makeLinkStages(profile.connection, 'lab', adjustment)];
}

/** The stages of `fromLabD50`. */
export function makeFromLabStages(profile: IccProfile, intent: Intent): Stage[] {
  const [x, y, z] = absoluteScale(profile, intent);
  const adjustment = scaleAdjustment([1 / x, 1 / y, 1 / z]);
  return [
    ...makeLinkStages('lab', profile.connection, adjustment),
    ...makeBackwardStages(profile, intent, 'clipped'),
  ];
}
