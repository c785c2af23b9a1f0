import type { CardRecipe } from './card-recipe.ts';
import { recipeFor } from './card-recipe.ts';
import { findFamily, findRecipe } from './catalogue.ts';
import {
  type Caution,
  type PressMethod,
  type PressRecipe,
  type PressRule,
  SIGNAL_WORDS,
} from './press-records.ts';
import type { BlankRecord, FamilyRecord, ProtectiveFilm, Source } from './records.ts';
import {
  BLANKS_WARNING,
  CAUTIONS,
  PRESS_RULES,
  PRESS_WARNING,
  PRESSURE_WORDS,
  SIGNAL_WORDS_NOTE,
  STANDING_CAUTION,
} from './seed-data.ts';

/** How a blank is pressed, as data: the card of `press`. Common practice; the blank maker's sheet wins. */
export interface PressCard {
  readonly blank: BlankRecord;
  /** null when the record names none. */
  readonly family: FamilyRecord | null;
  readonly mirrored: boolean;
  /** null when none is usual. */
  readonly protectiveFilm: ProtectiveFilm | null;
  /** What shows where the art is white; null when that is white. */
  readonly baseNote: string | null;
  /** null when the record names none: then the alternatives are all of its family, to choose by the material. */
  readonly recipe: CardRecipe | null;
  readonly alternatives: readonly CardRecipe[];
  /** Rules that hold for every recipe. */
  readonly rules: readonly PressRule[];
  /** What to think of the sizes, of the ranges, of the pressure words, and of the signal words. */
  readonly notes: {
    readonly sizes: string;
    readonly ranges: string;
    readonly pressure: string;
    readonly signalWords: string;
  };
  /** In the order in which they should be read: the gravest first. */
  readonly cautions: readonly Caution[];
  /** Who has the last word. */
  readonly standing: string;
  /** Of the blank and of the recipe. */
  readonly sources: readonly Source[];
}

/** The press card of a blank of the catalogue or of a record that was read. */
export function pressCard(blank: BlankRecord): PressCard {
  const family = findFamily(blank.family ?? '') ?? null;
  const recipe = findRecipe(blank.recipe ?? '');
  const alternatives = otherRecipes(recipe, family);
  const methods = [recipe, ...alternatives].flatMap((one) => (one ? [one.method] : []));
  return {
    blank,
    family,
    mirrored: blank.surface === 'first',
    protectiveFilm: blank.protectiveFilm ?? family?.protectiveFilm ?? null,
    baseNote: family?.baseNote ?? null,
    recipe: recipe ? recipeFor(blank, recipe) : null,
    alternatives: alternatives.map((other) => recipeFor(blank, other)),
    rules: PRESS_RULES.filter(({ sides }) => sides === undefined || sides === blank.sides),
    notes: {
      sizes: BLANKS_WARNING,
      ranges: PRESS_WARNING,
      pressure: PRESSURE_WORDS.note,
      signalWords: SIGNAL_WORDS_NOTE,
    },
    cautions: SIGNAL_WORDS.flatMap((word) =>
      CAUTIONS.filter((caution) => caution.signalWord === word && isAbout(caution, blank, methods)),
    ),
    standing: STANDING_CAUTION,
    sources: [...(blank.sources ?? []), ...(recipe?.sources ?? [])],
  };
}

/** Alternatives of the recipe that the family knows too; without a recipe all of the family. */
function otherRecipes(recipe: PressRecipe | undefined, family: FamilyRecord | null): readonly PressRecipe[] {
  const ofFamily = family?.recipes ?? [];
  const others = recipe ? (recipe.alternatives ?? []).filter((id) => ofFamily.includes(id)) : ofFamily;
  return others.map((id) => findRecipe(id)).filter((other) => other !== undefined);
}

function isAbout(caution: Caution, blank: BlankRecord, methods: readonly PressMethod[]): boolean {
  const { families, methods: ofMethods, blanks } = caution;
  if (!families && !ofMethods && !blanks) return true;
  return (
    (families?.includes(blank.family ?? '') ?? false) ||
    (blanks?.includes(blank.id) ?? false) ||
    methods.some((method) => ofMethods?.includes(method) ?? false)
  );
}
