import { celsiusOf } from './heat.ts';
import type { LedgerEntry, PressedRecipe, Pressing } from './pressing.ts';

/** A result from here on went well (own choice: 4 and 5 of 5). */
const WENT_WELL = 4;

/** How a maker's own pieces of one blank came out best. */
export interface OwnSettings {
  /** Records of this blank that say how it was pressed. */
  readonly recorded: number;
  /** null where none went well. */
  readonly best: {
    readonly recipe: PressedRecipe;
    /** Of all pieces pressed so, the oldest first. */
    readonly results: readonly number[];
    /** The latest of the best among them. */
    readonly example: Pressing;
  } | null;
}

/**
 * The settings of a blank with the best mean result, if that is 4 or more; of equal ones those that were pressed more
 * often, then those pressed last. Settings are the same where temperature (to a degree Celsius), time and pressure are.
 * null where no record of the blank says how it was pressed.
 */
export function findBestSettings(entries: readonly LedgerEntry[], blankId: string): OwnSettings | null {
  const ofBlank = entries
    .map(({ pressing }) => pressing)
    .filter(({ blank, recipe }) => blank.id === blankId && (heatOf(recipe) || recipe.timeS !== undefined))
    .sort((a, b) => (a.at < b.at ? -1 : a.at > b.at ? 1 : 0));
  if (ofBlank.length === 0) return null;
  const groups = new Map<string, Pressing[]>();
  for (const pressing of ofBlank) {
    const key = settingsOf(pressing.recipe);
    const group = groups.get(key);
    if (group) group.push(pressing);
    else groups.set(key, [pressing]);
  }
  const [first] = [...groups.values()].sort(bestFirst);
  return {
    recorded: ofBlank.length,
    best: first && meanOf(first) >= WENT_WELL ? describe(first) : null,
  };
}

function describe(group: readonly Pressing[]): NonNullable<OwnSettings['best']> {
  const most = Math.max(...group.map(({ result }) => result));
  const example = group.findLast(({ result }) => result === most)!;
  return { recipe: example.recipe, results: group.map(({ result }) => result), example };
}

function bestFirst(a: readonly Pressing[], b: readonly Pressing[]): number {
  return meanOf(b) - meanOf(a) || b.length - a.length || (a.at(-1)!.at < b.at(-1)!.at ? 1 : -1);
}

function meanOf(group: readonly Pressing[]): number {
  return group.reduce((sum, { result }) => sum + result, 0) / group.length;
}

/** What was measured on the platen counts before what was set: presses often read 5 to 15 C off (common practice). */
function heatOf({ temperature, platenTemperature }: PressedRecipe): PressedRecipe['temperature'] {
  return platenTemperature ?? temperature;
}

function settingsOf(recipe: PressedRecipe): string {
  const heat = heatOf(recipe);
  return JSON.stringify([heat && Math.round(celsiusOf(heat)), recipe.timeS, recipe.pressure]);
}
