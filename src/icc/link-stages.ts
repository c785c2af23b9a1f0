import type { Triple } from '../colour/triple.ts';
import { labToXyzStage, xyzToLabStage } from './connection.ts';
import type { ConnectionSpace } from './profile.ts';
import type { Stage } from './stage.ts';

/** x becomes scale x + offset on each axis of XYZ. */
export interface XyzAdjustment {
  readonly scale: Triple;
  readonly offset: Triple;
}

/** From the connection space of one profile to that of the next, with an adjustment in XYZ when there is one. */
export function makeLinkStages(
  from: ConnectionSpace,
  to: ConnectionSpace,
  adjustment: XyzAdjustment | null,
): Stage[] {
  if (!adjustment && from === to) return [];
  return [
    ...(from === 'lab' ? [labToXyzStage] : []),
    ...(adjustment ? [adjustStage(adjustment)] : []),
    ...(to === 'lab' ? [xyzToLabStage] : []),
  ];
}

function adjustStage({ scale: [sx, sy, sz], offset: [ox, oy, oz] }: XyzAdjustment): Stage {
  return (values) => {
    values[0] = values[0]! * sx + ox;
    values[1] = values[1]! * sy + oy;
    values[2] = values[2]! * sz + oz;
  };
}

/** Scaling only; null when it changes nothing. */
export function scaleAdjustment(scale: Triple): XyzAdjustment | null {
  return scale.every((factor) => factor === 1) ? null : { scale, offset: [0, 0, 0] };
}
