import type { BlankRecord, WrapRecord } from './records.ts';

export interface FlatSize {
  readonly widthMm: number;
  readonly heightMm: number;
}

/** True for a body whose two diameters differ: no rectangle of paper lies on it. */
export function isTapered(wrap: WrapRecord): boolean {
  return wrap.topDiameterMm !== wrap.bottomDiameterMm;
}

/** The flat paper of a straight body: pi x diameter, plus the overlap or less the gap, by the print height. */
export function flatPaperOf(wrap: WrapRecord): FlatSize {
  const wayRoundMm = Math.PI * wrap.topDiameterMm + (wrap.overlapMm ?? 0) - (wrap.handleGapMm ?? 0);
  return { widthMm: wrap.printWidthMm ?? wayRoundMm, heightMm: wrap.printHeightMm };
}

/** Nominal outline box of a flat blank, flat paper of a straight round one; null for tapered bodies. */
export function findFlatSize(blank: BlankRecord): FlatSize | null {
  if (blank.outline) return { widthMm: blank.outline.widthMm, heightMm: blank.outline.heightMm };
  if (!blank.wrap || isTapered(blank.wrap)) return null;
  return flatPaperOf(blank.wrap);
}
