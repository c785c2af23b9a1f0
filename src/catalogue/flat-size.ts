import { BlankcheckError } from '../blankcheck-error.ts';
import { type Development, developBand, type WayRound } from '../geometry/development.ts';
import type { BlankRecord, WrapRecord } from './records.ts';
import { bandOfBody } from './round-band.ts';

export interface FlatSize {
  readonly widthMm: number;
  readonly heightMm: number;
}

/** True for a body whose two diameters differ. */
export function isTapered(wrap: WrapRecord): boolean {
  return wrap.topDiameterMm !== wrap.bottomDiameterMm;
}

/** How far the paper of a record goes round. */
export function wayRoundOf(wrap: WrapRecord): WayRound {
  const { wayRound, printWidthMm, overlapMm, handleGapMm } = wrap;
  if (printWidthMm !== undefined) return { lengthMm: printWidthMm };
  return wayRound === 'whole' ? { overlapMm: overlapMm ?? 0 } : { gapMm: handleGapMm ?? 0 };
}

/** The flat paper of a round body. @throws BlankcheckError `bad-wrap` */
export function developWrap(wrap: WrapRecord): Development {
  return developBand(bandOfBody(wrap), wayRoundOf(wrap));
}

/** Nominal outline box of a flat blank, box of the flat paper of a round one; null where its measures make no paper. */
export function findFlatSize(blank: BlankRecord): FlatSize | null {
  if (blank.outline) return { widthMm: blank.outline.widthMm, heightMm: blank.outline.heightMm };
  if (!blank.wrap) return null;
  try {
    const { widthMm, heightMm } = developWrap(blank.wrap);
    return { widthMm, heightMm };
  } catch (error) {
    if (error instanceof BlankcheckError) return null;
    throw error;
  }
}
