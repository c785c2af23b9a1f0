import { costRows } from './cost-words.ts';
import { hang, type Page, paint } from './page.ts';
import type { ArtworkReport } from './report.ts';

/** What a good piece costs, where that was asked for. */
export function tellCost({ cost }: ArtworkReport, page: Page): readonly string[] {
  if (!cost) return [];
  const lines = costRows(cost).flatMap(([label, text]) => hang(`  ${label.padEnd(12)}`, text, page));
  return [paint('Cost, in the currency of your settings', 'strong', page), ...lines];
}
