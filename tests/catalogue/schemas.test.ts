import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, expectTypeOf, it } from 'vitest';
import type * as z from 'zod';
import type { blankSchema } from '../../src/catalogue/blank-schema.ts';
import type { ConditionRecord } from '../../src/catalogue/condition-record.ts';
import type { conditionSchema } from '../../src/catalogue/condition-schema.ts';
import type { familySchema } from '../../src/catalogue/family-schema.ts';
import type {
  MarginRecord,
  PaperBehaviourRecord,
  RollRecord,
  SheetRecord,
} from '../../src/catalogue/paper-records.ts';
import type {
  marginSchema,
  paperBehaviourSchema,
  rollSchema,
  sheetSchema,
} from '../../src/catalogue/paper-schema.ts';
import type {
  Caution,
  NoRecipe,
  PressRecipe,
  PressRule,
  PressureWords,
} from '../../src/catalogue/press-records.ts';
import type {
  cautionSchema,
  noRecipeSchema,
  pressRuleSchema,
  pressureWordsSchema,
  recipeSchema,
} from '../../src/catalogue/press-schema.ts';
import type { PrinterRecord } from '../../src/catalogue/printer-record.ts';
import type { printerSchema } from '../../src/catalogue/printer-schema.ts';
import type { BlankRecord, FamilyRecord } from '../../src/catalogue/records.ts';
import { SEED_SCHEMAS, writeSeedSchemas } from '../../src/catalogue/seed-schemas.ts';
import { readSeed, readSeedText } from './seed-files.ts';

const FILES = [
  'blanks',
  'families',
  'press-recipes',
  'cautions',
  'papers',
  'practice',
  'printing-conditions',
] as const;

/** readonly is ours to promise; the schemas know nothing of it. */
type Written<T> = T extends object ? { -readonly [K in keyof T]: Written<T[K]> } : T;

describe('schemas', () => {
  it('have exactly the fields of the records', () => {
    expectTypeOf<z.output<typeof blankSchema>>().toEqualTypeOf<Written<BlankRecord>>();
    expectTypeOf<z.output<typeof familySchema>>().toEqualTypeOf<Written<FamilyRecord>>();
    expectTypeOf<z.output<typeof recipeSchema>>().toEqualTypeOf<Written<PressRecipe>>();
    expectTypeOf<z.output<typeof pressureWordsSchema>>().toEqualTypeOf<Written<PressureWords>>();
    expectTypeOf<z.output<typeof pressRuleSchema>>().toEqualTypeOf<Written<PressRule>>();
    expectTypeOf<z.output<typeof noRecipeSchema>>().toEqualTypeOf<Written<NoRecipe>>();
    expectTypeOf<z.output<typeof cautionSchema>>().toEqualTypeOf<Written<Caution>>();
    expectTypeOf<z.output<typeof conditionSchema>>().toEqualTypeOf<Written<ConditionRecord>>();
    expectTypeOf<z.output<typeof printerSchema>>().toEqualTypeOf<Written<PrinterRecord>>();
    expectTypeOf<z.output<typeof sheetSchema>>().toEqualTypeOf<Written<SheetRecord>>();
    expectTypeOf<z.output<typeof rollSchema>>().toEqualTypeOf<Written<RollRecord>>();
    expectTypeOf<z.output<typeof marginSchema>>().toEqualTypeOf<Written<MarginRecord>>();
    expectTypeOf<z.output<typeof paperBehaviourSchema>>().toEqualTypeOf<Written<PaperBehaviourRecord>>();
  });

  it('stand in seeds/schema as the code makes them', () => {
    const made = writeSeedSchemas();
    expect([...made.keys()].sort()).toEqual(
      [...FILES, 'blank', 'printer', 'sheet-job'].map((name) => `${name}.schema.json`).sort(),
    );
    for (const [name, text] of made) expect(readSeedText(`schema/${name}`), name).toBe(text);
  });

  // Second implementation: ajv 8 reads the written JSON Schema (draft 2020-12), zod the schema itself.
  describe.each(FILES)('%s.json', (name) => {
    const validate = new Ajv2020({ allErrors: true, strict: true }).compile(
      readSeed(`schema/${name}.schema.json`) as object,
    );

    it('fits its schema', () => {
      const seed = readSeed(`${name}.json`);
      expect(validate(seed), JSON.stringify(validate.errors)).toBe(true);
      expect(SEED_SCHEMAS[name].safeParse(seed).error?.issues ?? []).toEqual([]);
    });

    it('names its schema beside it', () => {
      expect(readSeed(`${name}.json`)).toMatchObject({ $schema: `./schema/${name}.schema.json` });
    });

    it.each([
      ['a field that is not there', (record: Record<string, unknown>) => ({ ...record, widthInches: 4 })],
      ['no source', (record: Record<string, unknown>) => ({ ...record, sources: [] })],
      ['an id with a space', (record: Record<string, unknown>) => ({ ...record, id: 'no id' })],
    ])('a record with %s is refused by both', (_, change) => {
      const seed = readSeed(`${name}.json`) as Record<string, unknown>;
      const [key, records] = Object.entries(seed).find(([, value]) => isRecordList(value))!;
      const [first, ...rest] = records as Record<string, unknown>[];
      const changed = { ...seed, [key]: [change(first!), ...rest] };
      expect(validate(changed)).toBe(false);
      expect(SEED_SCHEMAS[name].safeParse(changed).success).toBe(false);
    });
  });
});

function isRecordList(value: unknown): boolean {
  return Array.isArray(value) && value.every((entry) => typeof entry === 'object' && 'id' in entry);
}
