import { findAdjustment, type TransformOptions } from './adjustment.ts';
import { makeBackwardStages, requireBackward } from './backward-stages.ts';
import { compileTransform } from './compile.ts';
import { decodeConnection, encodeConnection } from './connection.ts';
import { makeForwardStages, requireForward } from './forward-stages.ts';
import { makeLinkStages } from './link-stages.ts';
import type { PixelTransform } from './pixel-transform.ts';
import type { IccProfile } from './profile.ts';
import { runStages } from './stage.ts';

/** A conversion from one profile's device colours to another's. */
export interface Transform {
  /** One colour in double precision: 0…1 each (ink: 1 is full ink), Lab and XYZ device spaces in their own units. */
  convert(device: readonly number[]): number[];
  /**
   * The same made fast for the pixels of pictures; `compileTransform` says how near it comes. Lab and XYZ device
   * spaces stand on the samples as in the connection space: L* 0…100 and a*, b* -128…127 on 0…full scale.
   */
  compile(): PixelTransform;
}

/**
 * The conversion from the device colours of `source` to those of `target`. What the target cannot hold is clipped by
 * its tables, or channel by channel where it has none.
 * @throws profile-missing-tag when a profile does not describe the direction that is needed
 * @see ICC.1:2022, 6.2 and annex F; ISO 18619:2015
 */
export function makeTransform(source: IccProfile, target: IccProfile, options: TransformOptions): Transform {
  const { intent } = options;
  const adjustment = findAdjustment(source, target, options);
  const start = [
    ...makeForwardStages(source, intent),
    ...makeLinkStages(source.connection, target.connection, adjustment),
  ];
  const stages = [...start, ...makeBackwardStages(target, intent, 'clipped')];
  return {
    convert: (device) => runStages(stages, device, target.channels),
    compile: () =>
      compileTransform({
        source: requireForward(source, intent),
        target: requireBackward(target, intent),
        inputs: source.channels,
        outputs: target.channels,
        stages: [
          ...decodeConnection(source.space, SAMPLES),
          ...start,
          ...makeBackwardStages(target, intent, 'extended'),
          ...encodeConnection(target.space, SAMPLES),
        ],
        isDirect: adjustment === null,
      }),
  };
}

/** How Lab stands on the samples of a picture. */
const SAMPLES = { labEncoding: 'full' } as const;
