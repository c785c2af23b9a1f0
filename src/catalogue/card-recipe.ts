import type { PressRecipe, PressureRange, StartingSpan, TimeVariant } from './press-records.ts';
import { findPressureRange } from './pressure-range.ts';
import type { BlankRecord, Span } from './records.ts';

/** A recipe as it counts for one blank. */
export interface CardRecipe {
  readonly recipe: PressRecipe;
  /** Seconds, narrowed to the variant for this blank; the start moves into it. Per position where the recipe says so. */
  readonly timeS: StartingSpan;
  readonly timeMinutes: StartingSpan;
  /** The variant whose times count; null when the whole range does. */
  readonly variant: TimeVariant | null;
  readonly pressureOnWork: PressureRange | null;
  readonly layerOrder: 'bottom-to-top' | 'body-outwards';
}

/** The recipe with the times of the variant that names the blank. */
export function recipeFor(blank: BlankRecord, recipe: PressRecipe): CardRecipe {
  const variant = recipe.timeVariants?.find(({ blanks }) => blanks?.includes(blank.id)) ?? null;
  const timeS = variant
    ? { ...variant.timeS, start: moveInto(variant.timeS, recipe.timeS.start) }
    : recipe.timeS;
  return {
    recipe,
    timeS,
    timeMinutes: { min: timeS.min / 60, max: timeS.max / 60, start: timeS.start / 60 },
    variant,
    pressureOnWork: findPressureRange(recipe.pressure),
    layerOrder: recipe.method === 'flat-press' ? 'bottom-to-top' : 'body-outwards',
  };
}

function moveInto({ min, max }: Span, value: number): number {
  return Math.min(max, Math.max(min, value));
}
