import * as z from 'zod';
import type { Confidence, Source, Span } from './records.ts';

const sourceSchema = z.strictObject({
  mark: z
    .enum(['a', 'a*', 'b', 'c', 'd'])
    .describe('a standard, a* standard recalled, b common practice, c recalled, d derived'),
  covers: z
    .exactOptional(z.string().min(1))
    .describe('the values that it is the source of; all when left out'),
  text: z.string().min(1),
}) satisfies z.ZodType<Source>;

export const sourcesSchema = z.array(sourceSchema).min(1);

export const confidenceSchema = z
  .enum(['high', 'medium', 'low'])
  .describe('high: main values rest on a; medium: on b or a*; low: on c') satisfies z.ZodType<Confidence>;

/** Kebab-case, with points inside numbers (`tile-ceramic-4.25in`). */
export const idSchema = z.string().regex(/^[a-z0-9]+(?:[.-][a-z0-9]+)*$/);

/** A span of non-negative numbers; that min is not above max is for the linter to say. */
export const spanSchema = z.strictObject({
  min: z.number().nonnegative(),
  max: z.number().nonnegative(),
}) satisfies z.ZodType<Span>;
