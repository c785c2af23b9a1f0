import type { OwnSettings } from '../ledger/best-settings.ts';
import { hang, type Page, paint } from './page.ts';
import { dayOf, meansInWords, recipeInWords } from './pressing-words.ts';
import { showHidden } from './visible-text.ts';

/** More results than this are told by their number and mean. */
const MOST_RESULTS = 12;

/** The part of a press card that tells a maker's own best settings; nothing where nothing was recorded. */
export function ownSettingsLines(own: OwnSettings | null, page: Page): readonly string[] {
  if (!own) return [];
  const { recorded, best } = own;
  if (!best) {
    const text = `${recorded} recorded, and no settings with a mean of 4 of 5 or more: see blankcheck history.`;
    return [paint('Your own', 'strong', page), ...hang('  ', text, page)];
  }
  const { recipe, results, example } = best;
  const means = meansInWords(example);
  return [
    paint('Your own best', 'strong', page),
    ...hang('  ', `${recipeInWords(recipe)}.`, page),
    ...hang(
      '  ',
      `${resultsInWords(results)} Last on ${dayOf(example.at)}${means === '' ? '' : `: ${means}`}.`,
      page,
    ),
    ...(example.note ? hang('  ', `Note: ${showHidden(example.note)}`, page) : []),
  ];
}

function resultsInWords(results: readonly number[]): string {
  if (results.length === 1) return `Pressed so once: ${results[0]} of 5.`;
  if (results.length <= MOST_RESULTS)
    return `Pressed so ${results.length} times: ${results.join(', ')} of 5.`;
  const mean = results.reduce((sum, result) => sum + result, 0) / results.length;
  return `Pressed so ${results.length} times: ${Math.round(mean * 10) / 10} of 5 in the mean.`;
}
