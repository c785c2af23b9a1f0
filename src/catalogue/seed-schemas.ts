import * as z from 'zod';
import { blankFileSchema, seedBlankSchema } from './blank-schema.ts';
import { conditionSchema } from './condition-schema.ts';
import { familySchema } from './family-schema.ts';
import { marginSchema, paperBehaviourSchema, rollSchema, sheetSchema } from './paper-schema.ts';
import { practiceLimitSchema } from './practice-schema.ts';
import {
  cautionSchema,
  noRecipeSchema,
  pressRuleSchema,
  pressureWordsSchema,
  recipeSchema,
} from './press-schema.ts';
import { printerFileSchema } from './printer-schema.ts';
import { sheetJobSchema } from './sheet-job-schema.ts';

const head = { $schema: z.string(), title: z.string().min(1) };

/** One schema per file of seeds, and one for a file with a single blank or a printer, by the name of the schema's file. */
export const SEED_SCHEMAS = {
  blank: blankFileSchema,
  blanks: z.strictObject({ ...head, warning: z.string().min(1), blanks: z.array(seedBlankSchema) }),
  families: z.strictObject({ ...head, families: z.array(familySchema) }),
  'press-recipes': z.strictObject({
    ...head,
    warning: z.string().min(1),
    pressureWords: pressureWordsSchema,
    noRecipe: z.array(noRecipeSchema),
    rules: z.array(pressRuleSchema),
    recipes: z.array(recipeSchema),
  }),
  cautions: z.strictObject({
    ...head,
    standing: z.string().min(1),
    signalWords: z.string().min(1),
    cautions: z.array(cautionSchema),
  }),
  papers: z.strictObject({
    ...head,
    sheets: z.array(sheetSchema),
    rolls: z.array(rollSchema),
    margins: z.array(marginSchema),
    behaviour: z.array(paperBehaviourSchema),
  }),
  'printing-conditions': z.strictObject({ ...head, conditions: z.array(conditionSchema) }),
  printer: printerFileSchema,
  'sheet-job': sheetJobSchema,
  practice: z.strictObject({ ...head, limits: z.array(practiceLimitSchema) }),
} as const;

export type SeedFile = keyof typeof SEED_SCHEMAS;

/** JSON Schema (draft 2020-12) of each, as the text of its file. */
export function writeSeedSchemas(): ReadonlyMap<string, string> {
  return new Map(
    Object.entries(SEED_SCHEMAS).map(([name, schema]) => [
      `${name}.schema.json`,
      `${JSON.stringify(z.toJSONSchema(schema), null, 2)}\n`,
    ]),
  );
}
