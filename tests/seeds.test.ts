import { describe, expect, it } from 'vitest';
import * as module from '../src/catalogue/seed-data.ts';
import { PROFILE_DATA } from '../src/conditions/profile-data.ts';
import {
  blankFile,
  cautionFile,
  conditionFile,
  familyFile,
  paperFile,
  practiceFile,
  readSeed,
  readSeedBytes,
  readSeedText,
  recipeFile,
} from './catalogue/seed-files.ts';

/** The linter of the seeds: what no schema can say. Bodies of blanks are linted in catalogue/seed-blanks.test.ts. */
const { blanks } = blankFile;
const { families } = familyFile;
const { recipes, rules, noRecipe, pressureWords } = recipeFile;
const { cautions } = cautionFile;
const { sheets, rolls, margins, behaviour } = paperFile;

const FILES = [
  'blanks',
  'families',
  'press-recipes',
  'cautions',
  'papers',
  'practice',
  'printing-conditions',
] as const;
const { limits } = practiceFile;
const { conditions } = conditionFile;
const LISTS = {
  blanks,
  families,
  recipes,
  rules,
  cautions,
  sheets,
  rolls,
  margins,
  behaviour,
  limits,
  conditions,
};
/** Lists whose order is the order of reading. */
const IN_READING_ORDER = new Set(['rules', 'cautions']);

const ids = (records: readonly { readonly id: string }[]) => records.map(({ id }) => id);

interface Leaf {
  readonly keys: readonly string[];
  readonly value: unknown;
}

/** Every value below, with the keys that lead to it; entries of lists have the key of the list. */
function leavesOf(value: unknown, keys: readonly string[] = []): readonly Leaf[] {
  if (typeof value !== 'object' || value === null) return [{ keys, value }];
  if (Array.isArray(value)) return value.flatMap((entry) => leavesOf(entry, keys));
  return Object.entries(value).flatMap(([key, entry]) => leavesOf(entry, [...keys, key]));
}

const leaves = FILES.flatMap((name) => leavesOf(readSeed(`${name}.json`), [name]));
const texts = leaves.filter((leaf): leaf is Leaf & { value: string } => typeof leaf.value === 'string');

describe('records', () => {
  it.each(Object.entries(LISTS))(
    '%s have unique ids, sorted unless they are read in order',
    (name, records) => {
      const found = ids(records);
      expect(new Set(found).size).toBe(found.length);
      if (!IN_READING_ORDER.has(name)) expect(found).toEqual([...found].sort());
    },
  );

  it('are as many as the README says', () => {
    const readme = readSeedText('README.md');
    expect(readme).toContain(`| ${blanks.length} blanks,`);
    expect(readme).toContain(`| ${families.length} families`);
    expect(readme).toContain(`| ${recipes.length} press recipes`);
  });

  it('have at least one source, and a confidence that the sources bear', () => {
    const needed = { high: ['a'], medium: ['a*', 'b'], low: ['c'] } as const;
    for (const record of [...Object.values(LISTS).flat(), ...noRecipe, pressureWords]) {
      const sources = record.sources ?? [];
      expect(sources.length, JSON.stringify(record)).toBeGreaterThan(0);
      if (!('confidence' in record) || !record.confidence) continue;
      const marks: readonly string[] = sources.map(({ mark }) => mark);
      expect(
        needed[record.confidence].some((mark) => marks.includes(mark)),
        record.id,
      ).toBe(true);
    }
  });

  it('are in the module as they are in the files', () => {
    expect(module.BLANKS).toEqual(blanks);
    expect(module.FAMILIES).toEqual(families);
    expect(module.PRESS_RECIPES).toEqual(recipes);
    expect(module.PRESSURE_WORDS).toEqual(pressureWords);
    expect(module.PRESS_RULES).toEqual(rules);
    expect(module.NO_RECIPE).toEqual(noRecipe);
    expect(module.CAUTIONS).toEqual(cautions);
    expect(module.STANDING_CAUTION).toBe(cautionFile.standing);
    expect(module.SIGNAL_WORDS_NOTE).toBe(cautionFile.signalWords);
    expect([module.BLANKS_WARNING, module.PRESS_WARNING]).toEqual([blankFile.warning, recipeFile.warning]);
    expect([module.SHEETS, module.ROLLS, module.MARGINS]).toEqual([sheets, rolls, margins]);
    expect(module.PAPER_BEHAVIOUR).toEqual(behaviour);
    expect(module.PRACTICE).toEqual(limits);
    expect(module.CONDITIONS).toEqual(conditions);
  });
});

describe('numbers', () => {
  it('stand below a key that names their unit, or are counts', () => {
    const unit = /(?:Mm|In|Ppi|Percent|PercentMax|PerM2|C|F|S)$|^(?:psi|bar)$/;
    const counts = new Set(['sides', 'positions']);
    // A limit of practice has its unit beside it, since findings name both.
    const beside = (keys: readonly string[]) => keys[0] === 'practice' && keys.at(-1) === 'value';
    const bare = leaves
      .filter(({ value }) => typeof value === 'number')
      .filter(({ keys }) => !beside(keys) && !keys.some((key) => unit.test(key) || counts.has(key)));
    expect(bare).toEqual([]);
  });

  it('have spans that run upward, with the start inside', () => {
    const spans: { min: number; max?: number; start?: number }[] = [];
    const collect = (value: unknown): void => {
      if (typeof value !== 'object' || value === null) return;
      if ('min' in value) spans.push(value as { min: number });
      Object.values(value).forEach(collect);
    };
    for (const name of FILES) collect(readSeed(`${name}.json`));
    expect(spans.length).toBeGreaterThan(100);
    const wrong = spans.filter(
      ({ min, max = Infinity, start = min }) => min > max || start < min || start > max,
    );
    expect(wrong).toEqual([]);
  });

  // BIPM, SI Brochure 9 (2019), 2.3.1: t/C = T/K - 273.15; 1 F is 5/9 C, 32 F is 0 C (NIST SP 811, B.8).
  it('say the same in Fahrenheit and in Celsius, rounded to whole degrees', () => {
    for (const { id, temperatureC, temperatureF } of recipes) {
      for (const key of ['min', 'max', 'start'] as const) {
        expect(temperatureC[key], `${id} ${key}`).toBe(Math.round(((temperatureF[key] - 32) * 5) / 9));
      }
    }
  });

  // 1 psi = 6894.757 Pa (NIST SP 811, B.8).
  it('say the same in psi and in bar, rounded to a tenth', () => {
    for (const { psi, bar } of [pressureWords.light, pressureWords.medium, pressureWords.firm]) {
      expect(bar.min).toBe(Math.round(psi.min * 0.6894757) / 10);
      if (psi.max !== undefined) expect(bar.max).toBe(Math.round(psi.max * 0.6894757) / 10);
    }
  });
});

describe('references', () => {
  it('lead to records that are there', () => {
    const known = {
      families: new Set(ids(families)),
      recipes: new Set(ids(recipes)),
      blanks: new Set(ids(blanks)),
    };
    const methods = new Set<string>(recipes.map(({ method }) => method));
    const lost = [
      ...blanks.filter(({ family }) => !known.families.has(family!)),
      ...blanks.filter(({ recipe }) => !known.recipes.has(recipe!)),
      ...families.filter((family) => family.recipes.some((id) => !known.recipes.has(id))),
      ...recipes.filter(({ alternatives }) => alternatives?.some((id) => !known.recipes.has(id))),
      ...recipes.filter(({ timeVariants }) =>
        timeVariants?.some((variant) => variant.blanks?.some((id) => !known.blanks.has(id))),
      ),
      ...cautions.filter((caution) => caution.families?.some((id) => !known.families.has(id))),
      ...cautions.filter((caution) => caution.blanks?.some((id) => !known.blanks.has(id))),
      ...cautions.filter((caution) => caution.methods?.some((method) => !methods.has(method))),
    ];
    expect(ids(lost)).toEqual([]);
  });

  it('agree: a family lists the recipes of its blanks, and none but those and their alternatives', () => {
    for (const family of families) {
      const own = blanks.filter((blank) => blank.family === family.id).map(({ recipe }) => recipe!);
      const others = own.flatMap((id) => recipes.find((recipe) => recipe.id === id)?.alternatives ?? []);
      expect(family.recipes, family.id).toEqual(expect.arrayContaining(own));
      expect([...own, ...others], family.id).toEqual(expect.arrayContaining([...family.recipes]));
    }
  });

  it('agree: a time variant is for blanks that the recipe, or the one it stands in for, presses', () => {
    for (const recipe of recipes) {
      const named = recipe.timeVariants?.flatMap((variant) => variant.blanks ?? []) ?? [];
      expect(new Set(named).size, recipe.id).toBe(named.length);
      for (const id of named) {
        const usual = recipes.find((other) => other.id === blanks.find((blank) => blank.id === id)?.recipe);
        expect([usual?.id, ...(usual?.alternatives ?? [])], id).toContain(recipe.id);
      }
    }
  });
});

describe('printing conditions', () => {
  it('name the source of their data, as its permission asks', () => {
    for (const { attribution } of conditions)
      expect(attribution).toContain('Technical Report ANSI/CGATS/GRACoL TR 006-2007');
  });

  it('have their profiles in the module, byte by byte, and no others', () => {
    const files = conditions.map(({ id, profile }) => [id, readSeedBytes(profile).toString('base64')]);
    const made = Object.entries(PROFILE_DATA).map(([id, { icc }]) => [id, icc]);
    expect(made).toEqual(files);
  });
});

describe('words', () => {
  it('claim nothing about any piece', () => {
    const claims =
      /\bsafe\b(?! (?:area|inset|line|ring))|food[- ]grade|\bcompl(?:y|ies|iant|iance)\b|hypoallergenic|non-?toxic|\bharmless\b(?<!does not mean harmless)/i;
    expect(texts.filter(({ value }) => claims.test(value)).map(({ value }) => value)).toEqual([]);
  });

  it('are plain: no marks of a maker, no addresses, nothing a terminal cannot show', () => {
    const strange = /[^\x20-\x7e]|https?:|www\.|(?:^|\s)\/[a-z]|\((?:r|tm)\)/i;
    expect(texts.filter(({ value }) => strange.test(value)).map(({ value }) => value)).toEqual([]);
  });

  it('explain every field in the README', () => {
    const readme = readSeedText('README.md');
    const keys = new Set(
      leaves.flatMap((leaf) => leaf.keys.slice(1)).filter((key) => key !== '$schema' && key !== 'title'),
    );
    expect([...keys].filter((key) => !readme.includes(key))).toEqual([]);
  });
});
