import { XYZ_D50 } from '../colour/lab.ts';
import type { ColourModel, IccProfile } from './profile.ts';

/** A table without elements: what comes in goes out. */
const identity: ColourModel = {
  kind: 'table',
  lut: { inputs: 3, outputs: 3, elements: [], labEncoding: 'full' },
};
const everyIntent = { perceptual: identity, relative: identity, saturation: identity };

/** L*a*b* (D50) as a profile, unbounded, with black at 0: an end of a transform that is not a device. */
export const LAB_PROFILE: IccProfile = {
  version: '4.4',
  majorVersion: 4,
  class: 'colour-space',
  space: 'lab',
  channels: 3,
  connection: 'lab',
  description: 'CIE L*a*b* D50',
  mediaWhiteXyz: XYZ_D50,
  adaptation: null,
  toConnection: everyIntent,
  fromConnection: everyIntent,
};
