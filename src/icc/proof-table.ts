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

/** How the colours of a space of three channels look once a printing condition has printed them. */
export interface ProofTable {
  /** One colour exactly, 0…1 each: the print in sRGB, relative to the paper's white, clipped where sRGB cannot hold it. */
  convert(device: readonly number[]): number[];
  /** The same of pixels of three 8-bit samples, interpolated: three samples of 16 bits each, within 1 of 255. */
  convert8(source: Uint8Array, target: Uint16Array, pixels: number): void;
  /** The same of samples of 16 bits. */
  convert16(source: Uint16Array, target: Uint16Array, pixels: number): void;
}

/**
 * The table of a printing condition for pictures in `source`, to be made once and kept. The way there is the conversion that is made to print:
 * relative colorimetric with black point compensation, by the condition's own tables. The way back is relative
 * colorimetric without it, so that the printed black looks no darker than it is.
 * @throws profile-missing-tag when the condition does not describe both directions
 * @see ICC.1:2022, 6.2; ISO 18619:2015
 */
export function makeProofTable(condition: IccProfile, source: IccProfile = SRGB_PROFILE): ProofTable {
  const toPrint = findAdjustment(source, condition, {
    intent: 'relative',
    blackPointCompensation: true,
  });
  const print = [
    ...makeForwardStages(source, 'relative'),
    ...makeLinkStages(source.connection, condition.connection, toPrint),
    ...makeBackwardStages(condition, 'relative', 'clipped'),
    ...makeForwardStages(condition, 'relative'),
    ...makeLinkStages(condition.connection, SRGB_PROFILE.connection, null),
  ];
  const exact = [...print, ...makeBackwardStages(SRGB_PROFILE, 'relative', 'clipped')];
  const plan = once(() => {
    const stages = [...print, ...makeBackwardStages(SRGB_PROFILE, 'relative', 'extended')];
    return planGrid(requireForward(source, 'relative'), stages, 3, 3);
  });
  const grid8 = once(() => makePixelGrid(plan(), 255, 65535));
  const grid16 = once(() => makePixelGrid(plan(), 65535));
  return {
    convert: (device) => runStages(exact, device, 3),
    convert8: (pixels8, target, pixels) => convertGrid3(pixels8, target, pixels, 3, 3, grid8()),
    convert16: (pixels16, target, pixels) => convertGrid3(pixels16, target, pixels, 3, 3, grid16()),
  };
}
