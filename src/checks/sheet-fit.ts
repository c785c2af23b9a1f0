import { formatSize } from '../geometry/length.ts';
import { findSmallestSheets } from '../sheet/find-smallest-sheets.ts';
import { fitPage, pageOf } from '../sheet/fit-page.ts';
import type { SizeMm } from '../sheet/paper.ts';
import { defineCheck, type WantedPage } from './define-check.ts';
import type { Finding } from './finding.ts';

/**
 * By the box of what is printed, on an arc that of its true outline. That is exact: a piece alone lies upright on a page
 * held either way, and a page with sides along those of the box takes the outline just where it takes the box.
 */
export default defineCheck<{ readonly page: WantedPage; readonly printedMm: SizeMm }>({
  id: 'sheet-fit',
  title: 'Piece against the sheet',
  reason:
    'A print shrunk to fit its page is the wrong size all over, and a piece that reaches into the margins loses what lies there.',
  source: [
    'ISO 216 and ANSI/ASME Y14.1 for sheets, common practice for the others (seeds/papers.json)',
    "margins of the printer's record, else those of an unknown one (seeds/papers.json)",
  ],
  codes: { 'too-large': ['error'] },
  needs: ({ page }) => {
    if (page === null) return { skip: 'no sheet was asked for: the file has the size of the piece' };
    if (page.printedMm === null) return { skip: 'nothing is printed, so any sheet takes it' };
    return { inputs: { page, printedMm: page.printedMm } };
  },
  run: ({ page, printedMm }) => ({ findings: findTooLarge(page, printedMm) }),
  phrases: {
    'too-large': ({ facts }) =>
      `What is printed of the piece, ${formatSize(Number(facts.widthMm), Number(facts.heightMm))}, does not fit the sheet ${facts.sheet}: the printer reaches ${formatSize(Number(facts.printableWidthMm), Number(facts.printableHeightMm))} of it, whichever way it is held. It is not scaled down. ${takeInstead(facts)}`,
  },
});

function findTooLarge({ paper, margins }: WantedPage, { width, height }: SizeMm): Finding[] {
  if (fitPage({ width, height }, paper, margins)) return [];
  const { printableMm } = pageOf(paper, margins, 'portrait', { width, height });
  const { iso, inch, roll } = findSmallestSheets({ width, height }, margins);
  return [
    {
      code: 'too-large',
      severity: 'error',
      facts: {
        widthMm: width,
        heightMm: height,
        sheet: paper.id,
        printableWidthMm: printableMm.width,
        printableHeightMm: printableMm.height,
        ...(iso && { smallestIso: iso }),
        ...(inch && { smallestInch: inch }),
        ...(roll && { smallestRoll: roll }),
      },
    },
  ];
}

function takeInstead({ smallestIso, smallestInch, smallestRoll }: Finding['facts']): string {
  const sheets = [smallestIso, smallestInch].filter((id) => id !== undefined);
  if (sheets.length > 0) return `The smallest sheet that takes it: ${sheets.join(' or ')}.`;
  if (smallestRoll !== undefined) return `No sheet takes it; the narrowest roll that does: ${smallestRoll}.`;
  return 'No sheet and no roll takes it: print it in parts.';
}
