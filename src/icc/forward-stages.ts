import { XYZ_D50 } from '../colour/lab.ts';
import { decodeConnection, encodeConnection } from './connection.ts';
import { type Curve, evaluateCurve } from './curve.ts';
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

/** The model from device to connection space. @throws profile-missing-tag when the profile has none */
export function requireForward(profile: IccProfile, intent: Intent): ColourModel {
  if (profile.toConnection) return profile.toConnection[tableIntentOf(intent)];
  throw profileError(
    'profile-missing-tag',
    'tag table',
    'expected a table from device to colour (A2B0), received none',
  );
}

/**
 * Device values to the profile's connection space (XYZ or L*a*b*, relative to the media white). Device values are
 * 0…1; those of a Lab or XYZ device space are in its own units. @throws profile-missing-tag
 */
export function makeForwardStages(profile: IccProfile, intent: Intent): Stage[] {
  const model = requireForward(profile, intent);
  if (model.kind === 'gray') return [grayStage(model.curve, profile.connection)];
  if (model.kind === 'table') {
    const { lut } = model;
    return [
      ...encodeConnection(profile.space, lut),
      ...makeLutStages(lut),
      ...decodeConnection(profile.connection, lut),
    ];
  }
  return [lineariseStage(model.curves), matrixStage(model.matrix)];
}

/** Remembers the last value of each channel: colours of a table come in order, and powers are slow. */
function lineariseStage(curves: readonly Curve[]): Stage {
  const asked = new Float64Array(curves.length).fill(Number.NaN);
  const found = new Float64Array(curves.length);
  return (values) => {
    for (let i = 0; i < curves.length; i++) {
      const value = values[i]!;
      if (value !== asked[i]) {
        found[i] = evaluateCurve(curves[i]!, value);
        asked[i] = value;
      }
      values[i] = found[i]!;
    }
  };
}

/** @see ICC.1:2022, F.2 monochrome profiles: the curve's value is the achromatic part of the connection space */
function grayStage(curve: Curve, connection: ConnectionSpace): Stage {
  return (values) => {
    const value = evaluateCurve(curve, values[0]!);
    values[0] = connection === 'xyz' ? value * XYZ_D50[0] : value * 100;
    values[1] = connection === 'xyz' ? value : 0;
    values[2] = connection === 'xyz' ? value * XYZ_D50[2] : 0;
  };
}
