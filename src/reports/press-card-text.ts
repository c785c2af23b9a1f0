import type { CardRecipe } from '../catalogue/card-recipe.ts';
import type { PressCard } from '../catalogue/press-card.ts';
import type { OwnSettings } from '../ledger/best-settings.ts';
import { bodyInWords } from './body-words.ts';
import { ownSettingsLines } from './own-settings-text.ts';
import { hang, type Page, paint } from './page.ts';
import { pieceRows } from './piece-card.ts';
import { afterRows, beforeRows, type Row, rangeRows, sourceLines, timesInWords } from './press-card-rows.ts';
import { startInWords } from './press-words.ts';
import type { ArtworkReport } from './report.ts';
import { showHidden } from './visible-text.ts';

/**
 * The press card as a text to keep beside the press: blank, the piece where one is given, the maker's own best settings
 * where a ledger knows them, starting point, ranges, the way through, cautions, who wins.
 */
export function renderPressCard(
  card: PressCard,
  page: Page,
  own: OwnSettings | null = null,
  piece: ArtworkReport | null = null,
): string {
  const sections = [
    headOf(card, page),
    piece ? table('This piece, seen from the front', pieceRows(piece), page) : [],
    ownSettingsLines(own, page),
    ...(card.recipe ? recipeSections(card, card.recipe, page) : [choiceOf(card, page)]),
    listed(
      'Every press',
      card.rules.map(({ text }) => text),
      page,
    ),
    listed('Cautions at the press', cautionsOf(card, 'pressing'), page),
    listed('Cautions about the finished piece', cautionsOf(card, 'finished'), page),
    hang('', card.notes.signalWords, page),
    listed('Where the values come from', sourceLines(card), page),
    hang('', card.standing, page, 'strong'),
  ];
  return `${sections
    .filter((section) => section.length > 0)
    .map((section) => section.join('\n'))
    .join('\n\n')}\n`;
}

function headOf({ blank, mirrored }: PressCard, page: Page): readonly string[] {
  const reading = mirrored
    ? 'Print the paper MIRRORED: the dye lies on the face that is looked at (first surface).'
    : 'Print the paper NOT mirrored: the dye lies on the back and is seen through the body (second surface).';
  return [
    ...hang('', showHidden(blank.name), page).map((line) => paint(line, 'strong', page)),
    ...hang('', `${showHidden(blank.id)}: ${bodyInWords(blank)}.`, page),
    ...hang('', reading, page),
  ];
}

function recipeSections(card: PressCard, mine: CardRecipe, page: Page): readonly (readonly string[])[] {
  const { recipe, layerOrder } = mine;
  const order = layerOrder === 'bottom-to-top' ? 'from the bottom up' : 'from the body outwards';
  const minded = [card.blank.note, recipe.notes].filter((text) => text !== undefined);
  return [
    [
      paint('Start with', 'strong', page),
      ...hang('  ', `${startInWords(mine)}.`, page),
      ...hang('  ', `Recipe ${recipe.id}: ${recipe.name}.`, page),
    ],
    table('Ranges', rangeRows(mine, card.notes), page),
    table('Before', beforeRows(card, recipe), page),
    [
      paint(`Layers, ${order}`, 'strong', page),
      ...recipe.layers.flatMap((layer, i) => hang(`${String(i + 1).padStart(3)}  `, layer, page)),
    ],
    table('After', afterRows(recipe), page),
    listed('Mind', minded, page),
    listed('Another way', card.alternatives.map(otherWay), page),
  ];
}

/** For a record without a recipe: those of its family, to choose by the material. */
function choiceOf({ alternatives }: PressCard, page: Page): readonly string[] {
  if (alternatives.length === 0) {
    return hang('', "The record names no recipe and no family: press it by the maker's sheet.", page);
  }
  return listed(
    'The record names no recipe; its family has, to choose by the material',
    alternatives.map(otherWay),
    page,
  );
}

function otherWay(other: CardRecipe): string {
  return `${other.recipe.name} (${other.recipe.id}): start with ${startInWords(other)}; ${timesInWords(other)}.`;
}

function cautionsOf({ cautions }: PressCard, when: 'pressing' | 'finished'): readonly string[] {
  return cautions
    .filter((caution) => caution.when === when)
    .map(
      ({ signalWord, hazard, text, defersTo }) =>
        `${signalWord}, ${hazard.toLowerCase()}: ${text} Last word: ${defersTo}.`,
    );
}

function table(title: string, rows: readonly Row[], page: Page): readonly string[] {
  if (rows.length === 0) return [];
  const lines = rows.flatMap(([label, text]) => hang(`  ${label.padEnd(13)}`, showHidden(text), page));
  return [paint(title, 'strong', page), ...lines];
}

function listed(title: string, texts: readonly string[], page: Page): readonly string[] {
  if (texts.length === 0) return [];
  return [paint(title, 'strong', page), ...texts.flatMap((text) => hang('  - ', showHidden(text), page))];
}
