import type { CardRecipe } from '../catalogue/card-recipe.ts';
import type { PressCard } from '../catalogue/press-card.ts';
import type { PressRecipe } from '../catalogue/press-records.ts';
import type { Source } from '../catalogue/records.ts';
import {
  pressureInWords,
  spanInWords,
  temperatureInWords,
  timeInWords,
  workPressureInWords,
} from './press-words.ts';

/** A label and what stands behind it. */
export type Row = readonly [label: string, text: string];

const MARKS: Readonly<Record<Source['mark'], string>> = {
  a: 'standard',
  'a*': 'standard, recalled',
  b: 'common practice',
  c: 'recalled',
  d: 'derived',
};

const FILM = {
  usual: 'Peel the protective film off the coated face.',
  sometimes: 'Look for a protective film on the coated face, and peel it off.',
} as const;

/** Temperature, time and pressure, each with its range. */
export function rangeRows(mine: CardRecipe, notes: PressCard['notes']): readonly Row[] {
  const onWork = workPressureInWords(mine);
  return [
    ['temperature', temperatureInWords(mine.recipe)],
    ['time', timesInWords(mine)],
    ...variantRows(mine),
    ['pressure', onWork === '' ? pressureInWords(mine.recipe) : `${mine.recipe.pressure}: ${onWork}`],
    ...(onWork === '' ? [] : [['', notes.pressure] as const]),
    ['accuracy', notes.ranges],
  ];
}

/** The time of a variant says which blanks it is for; the others stand below the range of the recipe. */
export function timesInWords(mine: CardRecipe): string {
  return `${timeInWords(mine)}${mine.variant ? ` for ${mine.variant.when}` : ''}`;
}

function variantRows({ recipe, variant }: CardRecipe): readonly Row[] {
  if (variant) return [];
  return (recipe.timeVariants ?? []).map(
    ({ when, timeS }) => ['', `${when}: ${spanInWords(timeS)} s`] as const,
  );
}

/** What to do before the press closes. */
export function beforeRows(card: PressCard, { prePress }: PressRecipe): readonly Row[] {
  const { protectiveFilm, baseNote, notes } = card;
  return [
    ['size', notes.sizes],
    ...(protectiveFilm ? [['film', FILM[protectiveFilm]] as const] : []),
    ...(baseNote ? [['bare face', baseNote] as const] : []),
    ['warm-up', prePress],
  ];
}

/** What to do once it opens. */
export function afterRows({ peel, coolDown }: PressRecipe): readonly Row[] {
  return [
    ['peel', peel],
    ['cool', coolDown],
  ];
}

/** What each source covers, the standards behind the cautions, and how much the numbers can be trusted. */
export function sourceLines({ blank, recipe, sources, cautions }: PressCard): readonly string[] {
  const standards = cautions.flatMap((caution) => caution.sources.filter(({ mark }) => mark.startsWith('a')));
  const confidence = [
    ...(blank.confidence ? [`blank ${blank.confidence}`] : []),
    ...(recipe ? [`recipe ${recipe.recipe.confidence}`] : []),
  ];
  return [
    ...sources.map((source) => `${source.covers ?? 'all values'}: ${originOf(source)}`),
    ...standards.map((source) => `cautions: ${originOf(source)}`),
    ...(confidence.length > 0 ? [`confidence: ${confidence.join(', ')}`] : []),
  ];
}

function originOf({ mark, text }: Source): string {
  return text.startsWith(MARKS[mark]) ? text : `${MARKS[mark]}, ${text}`;
}
