import { findAdjustment } from './adjustment.ts';
import { makeBackwardStages } from './backward-stages.ts';
import { convertGrid3 } from './convert-grid3.ts';
import { makeForwardStages, requireForward } from './forward-stages.ts';
import { planGrid } from './grid-plan.ts';
import { makeLinkStages } from './link-stages.ts';
import { once } from './once.ts';
import { makePixelGrid } from './pixel-grid.ts';
import type { IccProfile } from './profile.ts';
import { SRGB_PROFILE } from './srgb-profile.ts';
import { runStages } from './stage.ts';

/** How the colours of sRGB look once a printing condition has printed them. */
export interface ProofTable {
  /** One colour exactly, 0…1 each: the print in sRGB, relative to the paper's white, clipped where sRGB cannot hold it. */
  convert(srgb: readonly number[]): number[];
  /** The same of pixels of three 8-bit samples, interpolated: three samples of 16 bits each, within 1 of 255. */
  convert8(source: Uint8Array, target: Uint16Array, pixels: number): void;
}

/**
 * The table of a printing condition, to be made once and kept. The way there is the conversion that is made to print:
 * relative colorimetric with black point compensation, by the condition's own tables. The way back is relative
 * colorimetric without it, so that the printed black looks no darker than it is.
 * @throws profile-missing-tag when the condition does not describe both directions
 * @see ICC.1:2022, 6.2; ISO 18619:2015
 */
export function makeProofTable(condition: IccProfile): ProofTable {
  const toPrint = findAdjustment(SRGB_PROFILE, condition, {
    intent: 'relative',
    blackPointCompensation: true,
  });
  const print = [
    ...makeForwardStages(SRGB_PROFILE, 'relative'),
    ...makeLinkStages(SRGB_PROFILE.connection, condition.connection, toPrint),
    ...makeBackwardStages(condition, 'relative', 'clipped'),
    ...makeForwardStages(condition, 'relative'),
    ...makeLinkStages(condition.connection, SRGB_PROFILE.connection, null),
  ];
  const exact = [...print, ...makeBackwardStages(SRGB_PROFILE, 'relative', 'clipped')];
  const grid = once(() => {
    const stages = [...print, ...makeBackwardStages(SRGB_PROFILE, 'relative', 'extended')];
    return makePixelGrid(planGrid(requireForward(SRGB_PROFILE, 'relative'), stages, 3, 3), 255, 65535);
  });
  return {
    convert: (srgb) => runStages(exact, srgb, 3),
    convert8: (source, target, pixels) => convertGrid3(source, target, pixels, 3, 3, grid()),
  };
}
