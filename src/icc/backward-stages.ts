import { decodeConnection, encodeConnection } from './connection.ts';
import type { Curve } from './curve.ts';
import { invertCurve } from './invert-curve.ts';
import { makeLutStages } from './lut-stages.ts';
import { matrixStage } from './matrix-stage.ts';
import {
  type ColourModel,
  type ConnectionSpace,
  type IccProfile,
  type Intent,
  tableIntentOf,
} from './profile.ts';
import { profileError } from './profile-error.ts';
import type { Stage } from './stage.ts';

/** The model from connection space to device. @throws profile-missing-tag when the profile has none */
export function requireBackward(profile: IccProfile, intent: Intent): ColourModel {
  if (profile.fromConnection) return profile.fromConnection[tableIntentOf(intent)];
  throw profileError(
    'profile-missing-tag',
    'tag table',
    'expected a table from colour to device (B2A0), received none',
  );
}

/**
 * Connection space to device values. `clipped`: 0…1. `extended`: where a matrix leads beyond 0…1 the values go on
 * smoothly, so that whoever interpolates between them can clip afterwards. @throws profile-missing-tag
 */
export function makeBackwardStages(
  profile: IccProfile,
  intent: Intent,
  range: 'clipped' | 'extended',
): Stage[] {
  const model = requireBackward(profile, intent);
  if (model.kind === 'gray') return [grayStage(model.curve, profile.connection)];
  if (model.kind === 'table') {
    const { lut } = model;
    return [
      ...encodeConnection(profile.connection, lut),
      ...makeLutStages(lut),
      ...decodeConnection(profile.space, lut),
    ];
  }
  const inverses = model.curves.map(invertCurve).map(range === 'clipped' ? (find) => find : extend);
  const encode: Stage = (values) => {
    for (let i = 0; i < 3; i++) values[i] = inverses[i]!(values[i]!);
  };
  return [matrixStage(model.inverse), encode];
}

function grayStage(curve: Curve, connection: ConnectionSpace): Stage {
  const find = invertCurve(curve);
  return (values) => {
    values[0] = connection === 'xyz' ? find(values[1]!) : find(values[0]! / 100);
  };
}

/** Point reflection at both ends: smooth, and as steep beyond an end as before it. */
function extend(find: (y: number) => number): (y: number) => number {
  return (y) => (y < 0 ? -find(-y) : y > 1 ? 2 - find(2 - y) : find(y));
}
