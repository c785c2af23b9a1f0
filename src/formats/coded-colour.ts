import type { StatedColour } from './container-facts.ts';

const UNSPECIFIED = 2;
const BT709_PRIMARIES = 1;
const SRGB_TRANSFER = 13;

/**
 * What colour codes say, as PNG (`cICP`) and AVIF (`nclx`) use them. Only sRGB is understood: 1/13, or one of
 * the two with the other left open.
 * @see Rec. ITU-T H.273, tables 2 and 3
 */
export function readColourCodes(primaries: number, transfer: number): StatedColour {
  if (primaries === UNSPECIFIED && transfer === UNSPECIFIED) return { kind: 'none' };
  if ([BT709_PRIMARIES, UNSPECIFIED].includes(primaries) && [SRGB_TRANSFER, UNSPECIFIED].includes(transfer))
    return { kind: 'srgb' };
  return {
    kind: 'unusable',
    reason: `the colours are given by code (primaries ${primaries}, transfer ${transfer}), which is only understood for sRGB`,
  };
}
