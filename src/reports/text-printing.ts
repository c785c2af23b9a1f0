import { hang, type Page, paint } from './page.ts';
import type { ArtworkReport } from './report.ts';
import { tellPrinting } from './text-file.ts';

/**
 * How the print-ready files of a run are printed: what holds for every one of them, once. Lines with a newline at the end;
 * empty where no file was written, or nothing holds for all.
 */
export function renderPrintingAdvice(results: readonly ArtworkReport[], page: Page): string {
  const told = results.flatMap((report) => (report.output ? [tellPrinting(report.output, report)] : []));
  const shared = told[0]?.filter((advice) => told.every((others) => others.includes(advice))) ?? [];
  if (shared.length === 0) return '';
  const lines = shared.flatMap((advice) => hang('  - ', advice, page));
  return `${[paint('How to print them', 'strong', page), ...lines].join('\n')}\n`;
}
