import { listSheets } from '../catalogue/find-sheet.ts';
import type { Printer } from './printer.ts';

/** A way in which a print dialog makes a page smaller than it is, and the factor that comes of it. */
export interface FitExplanation {
  /** `margins`: fitted into what this sheet shows; `paper`: fitted on another sheet; `paper-margins`: into what that one shows. */
  readonly kind: 'margins' | 'paper' | 'paper-margins';
  /** Id of the sheet that the page was fitted to. */
  readonly sheet: string;
  /** Printed / intended length, the same on both axes, below 1. */
  readonly factor: number;
}

/**
 * All ways of shrinking a page of this printer's paper: into its own margins, or on to a sheet that is smaller on an
 * axis, taken for it by mistake. Derived: min((W - margins) / W, (H - margins) / H), and the smaller of the two ratios of
 * sides for page on page.
 */
export function listFitExplanations({
  paper,
  marginsMm,
}: Pick<Printer, 'paper' | 'marginsMm'>): readonly FitExplanation[] {
  const { left, right, lead, trail } = marginsMm;
  const ratioOf = (widthMm: number, heightMm: number) =>
    Math.min(widthMm / paper.widthMm, heightMm / paper.heightMm);
  const inside = (sheet: { readonly widthMm: number; readonly heightMm: number }) =>
    ratioOf(sheet.widthMm - left - right, sheet.heightMm - lead - trail);
  const own: FitExplanation = { kind: 'margins', sheet: paper.id, factor: inside(paper) };
  const wrong = listSheets().flatMap((sheet): FitExplanation[] => {
    const factor = ratioOf(sheet.widthMm, sheet.heightMm);
    if (sheet.id === paper.id || factor >= 1) return [];
    return [
      { kind: 'paper', sheet: sheet.id, factor },
      { kind: 'paper-margins', sheet: sheet.id, factor: inside(sheet) },
    ];
  });
  return [own, ...wrong].filter(({ factor }) => factor < 1);
}
