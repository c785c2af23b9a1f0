import * as z from 'zod';
import { protectiveFilmSchema, smallestStrokeSchema } from './blank-schema.ts';
import type { FamilyRecord, ResolutionLimits, Tolerance } from './records.ts';
import { confidenceSchema, idSchema, sourcesSchema, spanSchema } from './source-schema.ts';

const toleranceSchema = z.strictObject({
  sizePlusMinusMm: z.exactOptional(spanSchema),
  diameterPlusMinusMm: z.exactOptional(spanSchema),
  circumferencePlusMinusMm: z.exactOptional(spanSchema),
  heightPlusMinusMm: z.exactOptional(spanSchema),
  heatShrinkPercent: z.exactOptional(spanSchema),
}) satisfies z.ZodType<Tolerance>;

const ppi = z.number().positive().max(2400);

const resolutionSchema = z.strictObject({
  good: ppi,
  acceptable: ppi,
  stopBelow: ppi,
}) satisfies z.ZodType<ResolutionLimits>;

export const familySchema = z.strictObject({
  id: idSchema,
  name: z.string().min(1),
  default: z.exactOptional(z.literal(true)),
  tolerance: toleranceSchema,
  toleranceNote: z.exactOptional(z.string().min(1)),
  nominalNameErrorPercentMax: z.exactOptional(z.number().positive().max(10)),
  placementPlusMinusMm: z.number().positive().max(10),
  bleedMm: z.number().nonnegative().max(50),
  safeMm: z.number().nonnegative().max(50),
  resolutionPpi: resolutionSchema,
  viewDistanceIn: z.number().positive(),
  viewDistanceMm: z.number().positive(),
  smallestStrokeMm: z.exactOptional(smallestStrokeSchema),
  protectiveFilm: z.exactOptional(protectiveFilmSchema),
  baseNote: z.exactOptional(z.string().min(1)),
  recipes: z.array(idSchema).min(1),
  sources: sourcesSchema,
  confidence: confidenceSchema,
}) satisfies z.ZodType<FamilyRecord>;
