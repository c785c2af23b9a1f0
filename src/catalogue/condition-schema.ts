import * as z from 'zod';
import type { ConditionRecord } from './condition-record.ts';
import { confidenceSchema, idSchema, sourcesSchema } from './source-schema.ts';

export const conditionSchema = z.strictObject({
  id: idSchema,
  name: z.string().min(1),
  reference: z.boolean(),
  profile: z.string().regex(/^conditions\/[a-z0-9-]+\.icc$/),
  attribution: z.string().min(1),
  confidence: confidenceSchema,
  sources: sourcesSchema,
}) satisfies z.ZodType<ConditionRecord>;
