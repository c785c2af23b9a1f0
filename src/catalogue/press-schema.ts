import * as z from 'zod';
import {
  type Caution,
  type NoRecipe,
  type PressMethod,
  type PressRecipe,
  type PressRule,
  type PressureRange,
  type PressureWords,
  SIGNAL_WORDS,
  type TimeVariant,
} from './press-records.ts';
import { confidenceSchema, idSchema, sourcesSchema, spanSchema } from './source-schema.ts';

const text = z.string().min(1);

const methodSchema = z.enum([
  'flat-press',
  'mug-press',
  'tumbler-press',
  'oven',
]) satisfies z.ZodType<PressMethod>;

const startingSpanSchema = spanSchema.extend({ start: z.number().nonnegative() });

const timeVariantSchema = z.strictObject({
  when: text,
  timeS: spanSchema,
  blanks: z.exactOptional(z.array(idSchema).min(1)),
}) satisfies z.ZodType<TimeVariant>;

export const recipeSchema = z.strictObject({
  id: idSchema,
  name: text,
  method: methodSchema,
  temperatureC: startingSpanSchema,
  temperatureF: startingSpanSchema,
  timeS: startingSpanSchema,
  timeIsPer: z.exactOptional(z.literal('position')),
  positions: z.exactOptional(z.strictObject({ usual: z.int().positive(), sometimes: z.int().positive() })),
  timeVariants: z.exactOptional(z.array(timeVariantSchema).min(1)),
  pressure: z.enum([
    'light',
    'light-medium',
    'medium',
    'medium-firm',
    'firm',
    'wrap tension',
    'sleeve tension',
  ]),
  pressureNote: z.exactOptional(text),
  prePress: text,
  peel: text,
  coolDown: text,
  layers: z.array(text).min(3),
  notes: z.exactOptional(text),
  alternatives: z.exactOptional(z.array(idSchema).min(1)),
  sources: sourcesSchema,
  confidence: confidenceSchema,
}) satisfies z.ZodType<PressRecipe>;

const atLeastSchema = z.strictObject({
  min: z.number().positive(),
  max: z.exactOptional(z.number().positive()),
});

const pressureRangeSchema = z.strictObject({
  psi: atLeastSchema,
  bar: atLeastSchema,
}) satisfies z.ZodType<PressureRange>;

export const pressureWordsSchema = z.strictObject({
  note: text,
  light: pressureRangeSchema,
  medium: pressureRangeSchema,
  firm: pressureRangeSchema,
  sources: sourcesSchema,
}) satisfies z.ZodType<PressureWords>;

export const pressRuleSchema = z.strictObject({
  id: idSchema,
  text,
  sides: z.exactOptional(z.literal(2)),
  sources: sourcesSchema,
}) satisfies z.ZodType<PressRule>;

export const noRecipeSchema = z.strictObject({
  material: text,
  why: text,
  sources: sourcesSchema,
}) satisfies z.ZodType<NoRecipe>;

export const cautionSchema = z.strictObject({
  id: idSchema,
  signalWord: z.enum(SIGNAL_WORDS),
  hazard: text,
  when: z.enum(['pressing', 'finished']),
  text,
  defersTo: text,
  families: z.exactOptional(z.array(idSchema).min(1)),
  methods: z.exactOptional(z.array(methodSchema).min(1)),
  blanks: z.exactOptional(z.array(idSchema).min(1)),
  sources: sourcesSchema,
}) satisfies z.ZodType<Caution>;
