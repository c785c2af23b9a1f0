import { XYZ_D50 } from '../colour/lab.ts';
import type { Triple } from '../colour/triple.ts';
import { findSourceBlack, findTargetBlack } from './black-point.ts';
import { scaleAdjustment, type XyzAdjustment } from './link-stages.ts';
import type { IccProfile, Intent } from './profile.ts';
import { absoluteScale } from './white-scale.ts';

export interface TransformOptions {
  readonly intent: Intent;
  /** The source's black becomes the target's, and what lies between is scaled. Has no effect on absolute. */
  readonly blackPointCompensation: boolean;
}

/**
 * What happens to XYZ between two profiles: media whites for absolute, black points when they are compensated.
 * Perceptual and saturation to a device of version 4 are always compensated, since the black of their connection space
 * is not that of version 2; Little CMS does the same. null when nothing happens.
 */
export function findAdjustment(
  source: IccProfile,
  target: IccProfile,
  { intent, blackPointCompensation }: TransformOptions,
): XyzAdjustment | null {
  if (intent === 'absolute') {
    const from = absoluteScale(source, intent);
    const to = absoluteScale(target, intent);
    return scaleAdjustment([from[0] / to[0], from[1] / to[1], from[2] / to[2]]);
  }
  const isDevice = target.space !== 'lab' && target.space !== 'xyz';
  const isForced = intent !== 'relative' && target.majorVersion === 4 && isDevice;
  if (!blackPointCompensation && !isForced) return null;
  return compensateBlack(findSourceBlack(source, intent), findTargetBlack(target, intent));
}

/**
 * The straight line on each axis of XYZ that leads from one black to the other and leaves D50 white where it is;
 * null when the blacks are equal. @see ISO 18619:2015
 */
export function compensateBlack(from: Triple, to: Triple): XyzAdjustment | null {
  if (from.every((value, i) => value === to[i])) return null;
  const scaleOn = (i: 0 | 1 | 2) => (to[i] - XYZ_D50[i]) / (from[i] - XYZ_D50[i]);
  const scale: Triple = [scaleOn(0), scaleOn(1), scaleOn(2)];
  return { scale, offset: [offsetOf(0), offsetOf(1), offsetOf(2)] };

  function offsetOf(i: 0 | 1 | 2): number {
    return XYZ_D50[i] * (1 - scale[i]);
  }
}
