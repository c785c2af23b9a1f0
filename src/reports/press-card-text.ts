import type { CardRecipe } from '../catalogue/card-recipe.ts';
import type { PressCard } from '../catalogue/press-card.ts';
import type { Caution } from '../catalogue/press-records.ts';
import type { Source } from '../catalogue/records.ts';
import { describeBody } from './body-words.ts';
import { hang, type Page, paint } from './page.ts';
import {
  pressureInWords,
  secondsInWords,
  spanInWords,
  temperatureInWords,
  timeInWords,
} from './press-words.ts';

const MARKS: Readonly<Record<Source['mark'], string>> = {
  a: 'published standard',
  'a*': 'published standard, recalled',
  b: 'common practice',
  c: 'recalled',
  d: 'derived',
};

/** The press card as a text to pin beside the press: the blank, where to start, the way through, cautions, who wins. */
export function renderPressCard(card: PressCard, page: Page): string {
  const sections = [
    headOf(card, page),
    ...(card.recipe ? recipeSections(card, card.recipe, page) : [noRecipe(page)]),
    listed('Another way to press it', card.alternatives.map(alternativeInWords), page),
    listed(
      'Every press',
      card.rules.map(({ text }) => text),
      page,
    ),
    listed('Cautions at the press', cautionsOf(card, 'pressing'), page),
    listed('Cautions about the finished piece', cautionsOf(card, 'finished'), page),
    listed('Where these values come from', [...card.sources.map(sourceInWords), ...card.warnings], page),
    hang('', card.standing, page),
  ];
  return `${sections
    .filter((section) => section.length > 0)
    .map((section) => section.join('\n'))
    .join('\n\n')}\n`;
}

function headOf(card: PressCard, page: Page): readonly string[] {
  const { blank, mirrored } = card;
  return [
    ...hang('', blank.name, page).map((line) => paint(line, 'strong', page)),
    ...hang('', `${blank.id}: ${describeBody(blank)}`, page),
    ...hang(
      '',
      mirrored
        ? 'Print the paper mirrored: the dye sits on the face that is looked at (first surface).'
        : 'Print the paper unmirrored: the dye sits on the back and is seen through the body (second surface).',
      page,
    ),
  ];
}

function recipeSections(card: PressCard, mine: CardRecipe, page: Page): readonly (readonly string[])[] {
  const { recipe, timeS, variant } = mine;
  const start = `${temperatureInWords(recipe)} for ${secondsInWords(timeS.start)}${perPosition(mine)}, ${pressureInWords(recipe)}.`;
  const film = {
    usual: 'Peel the protective film off the coated face',
    sometimes: 'Look for a protective film on the coated face, and peel it off',
  };
  const layers = recipe.layers.map((layer, i) => `${i + 1}. ${layer}`);
  return [
    [
      ...heading('Start with', page),
      ...hang('  ', start, page),
      ...hang('  ', `Recipe ${recipe.id}: ${recipe.name}.`, page),
    ],
    rows('Ranges', page, [
      [
        'temperature',
        `${spanInWords(recipe.temperatureC)} C (${spanInWords(recipe.temperatureF)} F), measured`,
      ],
      ['time', timeInWords(mine)],
      ...(variant ? [] : (recipe.timeVariants ?? [])).map(
        ({ when, timeS: span }) => ['', `${when}: ${spanInWords(span)} s`] as const,
      ),
      ['pressure', pressureRangeInWords(mine, card.pressureNote)],
    ]),
    rows('Before', page, [
      ['film', card.protectiveFilm ? `${film[card.protectiveFilm]}.` : ''],
      ['base', card.baseNote ?? ''],
      ['warm-up', recipe.prePress],
    ]),
    [
      ...heading(
        mine.layerOrder === 'bottom-to-top' ? 'Layers, from the bottom up' : 'Layers, from the body outwards',
        page,
      ),
      ...layers.flatMap((layer) => hang('  ', layer, page)),
    ],
    rows('After', page, [
      ['peel', recipe.peel],
      ['cool', recipe.coolDown],
    ]),
    listed(
      'Mind',
      [card.blank.note ?? '', recipe.notes ?? ''].filter((text) => text !== ''),
      page,
    ),
  ];
}
