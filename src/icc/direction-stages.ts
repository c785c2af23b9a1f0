import { XYZ_D50 } from '../colour/lab.ts';
import { decodeLabStage, decodeXyzStage, encodeLabStage, encodeXyzStage } from './connection.ts';
import { type Curve, evaluateCurve } from './curve.ts';
import { invertCurve } from './invert-curve.ts';
import type { Lut } from './lut.ts';
import { makeLutStages } from './lut-stages.ts';
import { matrixStage } from './matrix-stage.ts';
import type {
  ColourModel,
  ConnectionSpace,
  DeviceSpace,
  IccProfile,
  Intent,
  TableIntent,
} from './profile.ts';
import { profileError } from './profile-error.ts';
import type { Stage } from './stage.ts';

/** The intent whose model is used: absolute colorimetric reads the relative tables. @see ICC.1:2022, 6.2.5 */
export function tableIntentOf(intent: Intent): TableIntent {
  return intent === 'absolute' ? 'relative' : intent;
}

/** The model from device to connection space. @throws profile-missing-tag when the profile has none */
export function requireForward(profile: IccProfile, intent: Intent): ColourModel {
  if (profile.toConnection) return profile.toConnection[tableIntentOf(intent)];
  throw profileError(
    'profile-missing-tag',
    'tag table',
    'expected a table from device to colour (A2B0), received none',
  );
}

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
 * Device values to the profile's connection space (XYZ or L*a*b*, relative to the media white). Device values are
 * 0…1; those of a Lab or XYZ device space are in its own units.
 */
export function makeForwardStages(profile: IccProfile, intent: Intent): Stage[] {
  const model = requireForward(profile, intent);
  if (model.kind === 'table')
    return [
      ...encodeStages(profile.space, model.lut),
      ...makeLutStages(model.lut),
      ...decodeStages(profile.connection, model.lut),
    ];
  if (model.kind === 'gray') return [makeGrayStage(model.curve, profile.connection)];
  const { curves, matrix } = model;
  const linearise: Stage = (values) => {
    for (let i = 0; i < 3; i++) values[i] = evaluateCurve(curves[i]!, values[i]!);
  };
  return [linearise, matrixStage(matrix)];
}

/** Inverse of `makeForwardStages`: connection space to device values, which are clipped to 0…1. */
export function makeBackwardStages(profile: IccProfile, intent: Intent): Stage[] {
  const model = requireBackward(profile, intent);
  if (model.kind === 'table')
    return [
      ...encodeStages(profile.connection, model.lut),
      ...makeLutStages(model.lut),
      ...decodeStages(profile.space, model.lut),
    ];
  if (model.kind === 'gray') {
    const findValue = invertCurve(model.curve);
    return [
      profile.connection === 'xyz'
        ? (values) => {
            values[0] = findValue(values[1]!);
          }
        : (values) => {
            values[0] = findValue(values[0]! / 100);
          },
    ];
  }
  const inverses = model.curves.map(invertCurve);
  const encode: Stage = (values) => {
    for (let i = 0; i < 3; i++) values[i] = inverses[i]!(values[i]!);
  };
  return [matrixStage(model.inverse), encode];
}

/** @see ICC.1:2022, F.2 monochrome profiles: the curve's value is the achromatic part of the connection space */
function makeGrayStage(curve: Curve, connection: ConnectionSpace): Stage {
  return (values) => {
    const value = evaluateCurve(curve, values[0]!);
    values[0] = connection === 'xyz' ? value * XYZ_D50[0] : value * 100;
    values[1] = connection === 'xyz' ? value : 0;
    values[2] = connection === 'xyz' ? value * XYZ_D50[2] : 0;
  };
}

/** Lab and XYZ have units of their own on either side of a table; all other spaces are 0…1 already. */
function encodeStages(space: DeviceSpace | ConnectionSpace, lut: Lut): Stage[] {
  if (space === 'lab') return [encodeLabStage(lut.labEncoding)];
  return space === 'xyz' ? [encodeXyzStage] : [];
}

function decodeStages(space: DeviceSpace | ConnectionSpace, lut: Lut): Stage[] {
  if (space === 'lab') return [decodeLabStage(lut.labEncoding)];
  return space === 'xyz' ? [decodeXyzStage] : [];
}
