import type { PressRecipe } from './press-records.ts';
import type { BlankRecord, FamilyRecord } from './records.ts';
import { BLANKS, FAMILIES, PRESS_RECIPES } from './seed-data.ts';

const blanksById = new Map(BLANKS.map((blank) => [blank.id, blank]));
const familiesById = new Map(FAMILIES.map((family) => [family.id, family]));
const recipesById = new Map(PRESS_RECIPES.map((recipe) => [recipe.id, recipe]));

/** Every blank of the catalogue, flat and round, in the order of their ids. */
export function listBlanks(): readonly BlankRecord[] {
  return BLANKS;
}

/** The blank with exactly this id. */
export function findBlank(id: string): BlankRecord | undefined {
  return blanksById.get(id);
}

/** Every family of blanks, in the order of their ids. */
export function listFamilies(): readonly FamilyRecord[] {
  return FAMILIES;
}

/** The family with exactly this id. */
export function findFamily(id: string): FamilyRecord | undefined {
  return familiesById.get(id);
}

/** Every press recipe, in the order of their ids: common practice, no test of ours. */
export function listRecipes(): readonly PressRecipe[] {
  return PRESS_RECIPES;
}

/** The press recipe with exactly this id. */
export function findRecipe(id: string): PressRecipe | undefined {
  return recipesById.get(id);
}

/** The family whose limits count for blanks that name none. */
export const defaultFamily: FamilyRecord = FAMILIES.find((family) => family.default) ?? FAMILIES[0]!;

/** The blank's family, or the default one when the record names none or an unknown one. */
export function familyOf(blank: BlankRecord): FamilyRecord {
  return findFamily(blank.family ?? '') ?? defaultFamily;
}
