import * as z from 'zod';
import type { PracticeLimit } from './practice.ts';
import { confidenceSchema, idSchema, sourcesSchema } from './source-schema.ts';

export const practiceLimitSchema = z.strictObject({
  id: idSchema,
  value: z.number().positive(),
  unit: z.enum(['mm', 'mm2', 'px', 'ppi', 'percent', 'ml/m2', 'L*', 'alpha', 'dE00', 'degrees']),
  meaning: z.string().min(1),
  confidence: confidenceSchema,
  sources: sourcesSchema,
}) satisfies z.ZodType<PracticeLimit>;
