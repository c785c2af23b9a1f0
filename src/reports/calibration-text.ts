import type { FitExplanation } from '../printers/fit-explanations.ts';
import type { RulerVerdict } from '../printers/judge-rulers.ts';
import { hang, type Page } from './page.ts';
import { showHidden } from './visible-text.ts';

/** What two measured rulers tell of a printer, for a person at a terminal; `stored` where the record was changed. */
export function renderCalibration(
  verdict: RulerVerdict,
  { printer, stored }: { readonly printer: string; readonly stored: boolean },
  page: Page,
): string {
  const { x, y } = verdict.deviationPercent;
  const measured = `Across the sheet ${tellPercent(x)}, along it ${tellPercent(y)}.`;
  const lines = [
    ...hang('', `${showHidden(printer)}: ${tellVerdict(verdict, stored)}`, page),
    ...hang('  ', measured, page),
    ...hang('  ', tellNext(verdict), page),
  ];
  return `${lines.join('\n')}\n`;
}

function tellPercent(percent: number): string {
  if (percent === 0) return 'exact';
  return `${Math.abs(percent).toFixed(2)} % ${percent < 0 ? 'short' : 'long'}`;
}

function tellVerdict({ code }: RulerVerdict, stored: boolean): string {
  switch (code) {
    case 'exact':
      return 'prints at its size, nothing to do';
    case 'corrected':
      return stored ? 'the correction is stored in the record' : 'a correction was found, and not stored';
    case 'fit-to-page':
      return 'the page was shrunk ("fit to page"), nothing was stored';
    case 'borderless':
      return 'the driver enlarges (borderless printing), nothing was stored';
    case 'implausible':
      return 'these lengths are no error of a printer alone, nothing was stored';
  }
}

function tellNext({ code, explanation, scaleCorrection }: RulerVerdict): string {
  switch (code) {
    case 'exact':
      return 'The record stays as it is.';
    case 'corrected':
      return `Sheets are to be drawn ${tellFactor(scaleCorrection.scan, 'wide')} and ${tellFactor(scaleCorrection.feed, 'long')}. Print one again and measure to see it right.`;
    case 'fit-to-page':
      return `${explanation ? tellExplanation(explanation) : ''} Switch "fit to page" off, print at 100 % on the sheet of the record, and measure again.`.trim();
    case 'borderless':
      return 'Switch borderless printing off, print with margins, and measure again. Corrected, it would be wrong again with the next setting.';
    case 'implausible':
      return 'Look for: a scale other than 100 % in the print dialog, another sheet in the printer than in the dialog, a driver that scales one way, x and y mixed up (x runs across the sheet), a ruler that says another length (--ruler-length). Then print and measure again.';
  }
}

function tellFactor(factor: number, way: 'wide' | 'long'): string {
  return factor === 1 ? `just as ${way} as before` : `${factor} times as ${way}`;
}

function tellExplanation({ kind, sheet, factor }: FitExplanation): string {
  const percent = `${(factor * 100).toFixed(2)} %`;
  const id = showHidden(sheet);
  if (kind === 'margins') return `The margins of the record make ${percent} of a ${id} page.`;
  if (kind === 'paper') return `A page fitted on a ${id} sheet comes out at ${percent}.`;
  return `A page fitted into the margins of a ${id} sheet comes out at ${percent}.`;
}
