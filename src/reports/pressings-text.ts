import type { LedgerEntry } from '../ledger/pressing.ts';
import { hang, type Page, paint, type Style } from './page.ts';
import { dayOf, meansInWords, recipeInWords } from './pressing-words.ts';
import { showHidden } from './visible-text.ts';

/** More than this nobody reads on a screen; how many are left out is said. */
const MOST_SHOWN = 40;

const LABEL = '         ';

/** What was pressed and how it came out, one after the other; of many the first, and how many more there are. */
export function renderPressings(entries: readonly LedgerEntry[], page: Page): string {
  const lines = entries.slice(0, MOST_SHOWN).flatMap((entry) => tellPressing(entry, page));
  const more = entries.length - MOST_SHOWN;
  if (more > 0)
    lines.push(...hang('', `${more} more: narrow them by words, or see all with --csv or --json.`, page));
  return lines.map((line) => `${line}\n`).join('');
}

function tellPressing({ line, pressing }: LedgerEntry, page: Page): readonly string[] {
  const { blank, art, result, defects, recipe, photo, note } = pressing;
  const means = meansInWords(pressing);
  const settings = recipeInWords(recipe);
  const facts = [
    ...(settings === '' ? [] : [`${settings}.`]),
    ...(means === '' ? [] : [`${means}.`]),
    ...(defects.length > 0 ? [`Defects: ${defects.join(', ')}.`] : []),
    ...(photo ? [`Photo: ${showHidden(photo.file)}${photo.sha256 === null ? ' (was not there)' : ''}.`] : []),
    ...(note ? [`Note: ${showHidden(note)}`] : []),
  ];
  const what = art ? `${showHidden(art.file)} on ${showHidden(blank.id)}` : showHidden(blank.id);
  return [
    `${paint(`${result} of 5`, styleOf(result), page)}   ${paint(what, 'strong', page)}, ${dayOf(pressing.at)} (line ${line})`,
    ...facts.flatMap((fact) => hang(LABEL, fact, page)),
  ];
}

function styleOf(result: number): Style {
  if (result >= 4) return 'ready';
  return result === 3 ? 'look' : 'stop';
}
