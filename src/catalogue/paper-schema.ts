import * as z from 'zod';
import type { MarginRecord, PaperBehaviourRecord, RollRecord, SheetRecord } from './paper-records.ts';
import { confidenceSchema, idSchema, sourcesSchema, spanSchema } from './source-schema.ts';

const sideMm = z.number().positive().max(2000);
const origin = { sources: sourcesSchema, confidence: confidenceSchema };
const named = { id: idSchema, name: z.string().min(1) };

export const sheetSchema = z.strictObject({
  ...named,
  aliases: z.exactOptional(z.array(z.string().regex(/^[a-z0-9+-]+$/)).min(1)),
  pwgName: z.exactOptional(z.string().regex(/^(?:iso|na)_[a-z0-9-]+_[\d.]+x[\d.]+(?:mm|in)$/)),
  widthMm: sideMm,
  heightMm: sideMm,
  approximate: z.exactOptional(z.literal(true)),
  ...origin,
}) satisfies z.ZodType<SheetRecord>;

export const rollSchema = z.strictObject({
  ...named,
  widthIn: z.number().positive().max(80),
  widthMm: sideMm,
  ...origin,
}) satisfies z.ZodType<RollRecord>;

export const marginSchema = z.strictObject({
  ...named,
  default: z.exactOptional(z.literal(true)),
  sidesMm: spanSchema,
  leadMm: spanSchema,
  trailMm: spanSchema,
  trailSomeModesMm: z.exactOptional(spanSchema),
  enlargementPercent: z.exactOptional(spanSchema),
  notes: z.exactOptional(z.string().min(1)),
  ...origin,
}) satisfies z.ZodType<MarginRecord>;

const plusMinusMm = z.number().positive().max(10);

export const paperBehaviourSchema = z.strictObject({
  ...named,
  leftRightDifferenceMm: z.exactOptional(z.number().nonnegative().max(20)),
  leadTrailDifferenceMm: z.exactOptional(spanSchema),
  steps: z.exactOptional(
    z.array(
      z.union([
        z.strictObject({ upToMm: sideMm, plusMinusMm }),
        z.strictObject({ aboveMm: sideMm, plusMinusMm }),
      ]),
    ),
  ),
  growthPercent: z.exactOptional(spanSchema),
  weightGPerM2: z.exactOptional(spanSchema),
  notes: z.exactOptional(z.string().min(1)),
  ...origin,
}) satisfies z.ZodType<PaperBehaviourRecord>;
