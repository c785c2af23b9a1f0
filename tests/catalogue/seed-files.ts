import { readFileSync } from 'node:fs';
import type { ConditionRecord } from '../../src/catalogue/condition-record.ts';
import type {
  MarginRecord,
  PaperBehaviourRecord,
  RollRecord,
  SheetRecord,
} from '../../src/catalogue/paper-records.ts';
import type { PracticeLimit } from '../../src/catalogue/practice.ts';
import type {
  Caution,
  NoRecipe,
  PressRecipe,
  PressRule,
  PressureWords,
} from '../../src/catalogue/press-records.ts';
import type { BlankRecord, FamilyRecord } from '../../src/catalogue/records.ts';

/** The JSON of a file below `seeds/`, as it is on disk. */
export function readSeed(name: string): unknown {
  return JSON.parse(readSeedText(name));
}

export function readSeedText(name: string): string {
  return readFileSync(new URL(`../../seeds/${name}`, import.meta.url), 'utf8');
}

export function readSeedBytes(name: string): Buffer {
  return readFileSync(new URL(`../../seeds/${name}`, import.meta.url));
}

export const blankFile = readSeed('blanks.json') as { warning: string; blanks: BlankRecord[] };
export const familyFile = readSeed('families.json') as { families: FamilyRecord[] };
export const recipeFile = readSeed('press-recipes.json') as {
  warning: string;
  pressureWords: PressureWords;
  noRecipe: NoRecipe[];
  rules: PressRule[];
  recipes: PressRecipe[];
};
export const cautionFile = readSeed('cautions.json') as {
  standing: string;
  signalWords: string;
  cautions: Caution[];
};
export const paperFile = readSeed('papers.json') as {
  sheets: SheetRecord[];
  rolls: RollRecord[];
  margins: MarginRecord[];
  behaviour: PaperBehaviourRecord[];
};

export const conditionFile = readSeed('printing-conditions.json') as { conditions: ConditionRecord[] };
export const practiceFile = readSeed('practice.json') as { readonly limits: readonly PracticeLimit[] };
