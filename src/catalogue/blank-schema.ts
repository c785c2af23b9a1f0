import * as z from 'zod';
import type { BlankRecord, HoleRecord, OutlineRecord, SmallestStroke, WrapRecord } from './records.ts';
import { confidenceSchema, idSchema, sourcesSchema } from './source-schema.ts';

/** Larger than any press: a longer blank is a wrong unit. */
const LARGEST_MM = 10_000;

const sizeMm = z.number().positive().max(LARGEST_MM);
const lengthMm = z.number().nonnegative().max(LARGEST_MM);
const positionMm = z.number().min(-LARGEST_MM).max(LARGEST_MM);
const text = z.string().min(1).max(2000);
/** Names go into file names and reports: nothing in them moves a cursor. */
const line = text.regex(/^\P{Cc}*$/u);

const outlineSchema = z.strictObject({
  shape: z.enum(['rect', 'rounded-rect', 'circle', 'ellipse', 'stadium', 'polygon']),
  widthMm: sizeMm,
  heightMm: sizeMm,
  cornerRadiusMm: z.exactOptional(lengthMm),
  pointsMm: z.exactOptional(z.array(z.tuple([positionMm, positionMm])).max(2000)),
  edge: z.exactOptional(z.literal('irregular')),
}) satisfies z.ZodType<OutlineRecord>;

const holePlace = { use: text, xMm: positionMm, yMm: positionMm };

const holeSchema = z.discriminatedUnion('shape', [
  z.strictObject({ ...holePlace, shape: z.literal('circle'), diameterMm: sizeMm }),
  z.strictObject({ ...holePlace, shape: z.literal('slot'), widthMm: sizeMm, heightMm: sizeMm }),
]) satisfies z.ZodType<HoleRecord>;

const wrapSchema = z.strictObject({
  topDiameterMm: sizeMm,
  bottomDiameterMm: sizeMm,
  bodyHeightMm: sizeMm,
  printHeightMm: sizeMm,
  wayRound: z.enum(['whole', 'part']),
  overlapMm: z.exactOptional(lengthMm),
  handleGapMm: z.exactOptional(lengthMm),
  printWidthMm: z.exactOptional(sizeMm),
  clearTopMm: lengthMm,
  clearBaseMm: lengthMm,
  widestPrintMm: z.exactOptional(sizeMm),
  highestPrintMm: z.exactOptional(sizeMm),
}) satisfies z.ZodType<WrapRecord>;

export const smallestStrokeSchema = z.strictObject({
  positive: sizeMm.describe('dark on white'),
  reversed: sizeMm.describe('white on dark'),
}) satisfies z.ZodType<SmallestStroke>;

export const protectiveFilmSchema = z.enum(['usual', 'sometimes']);

/** One blank as a maker may write it: what is left out is unknown, or counts as its family has it. */
export const blankSchema = z.strictObject({
  id: line.max(100),
  name: line,
  family: z.exactOptional(text),
  outline: z.exactOptional(outlineSchema),
  wrap: z.exactOptional(wrapSchema),
  printable: z.exactOptional(outlineSchema),
  holes: z.exactOptional(z.array(holeSchema).max(200)),
  surface: z.enum(['first', 'second']),
  sides: z.exactOptional(z.literal([1, 2])),
  bleedMm: z.exactOptional(lengthMm),
  safeMm: z.exactOptional(lengthMm),
  bevelMm: z.exactOptional(sizeMm),
  thicknessMm: z.exactOptional(sizeMm),
  smallestStrokeMm: z.exactOptional(smallestStrokeSchema),
  recipe: z.exactOptional(text),
  ppi: z.exactOptional(z.number().positive().max(2400)),
  baseColour: z.exactOptional(z.string().regex(/^#[0-9a-f]{6}$/i)),
  protectiveFilm: z.exactOptional(protectiveFilmSchema),
  note: z.exactOptional(text),
  tier: z.exactOptional(z.enum(['core', 'extended'])),
  confidence: z.exactOptional(confidenceSchema),
  sources: z.exactOptional(sourcesSchema),
}) satisfies z.ZodType<BlankRecord>;

/** The same in a file of its own, which may name its schema for an editor. */
export const blankFileSchema = blankSchema.extend({ $schema: z.exactOptional(z.string()) });

/** One blank of the catalogue: nothing about its origin is left out. */
export const seedBlankSchema = blankSchema.extend({
  id: idSchema,
  family: idSchema,
  sides: z.literal([1, 2]),
  bleedMm: lengthMm,
  safeMm: lengthMm,
  recipe: idSchema,
  tier: z.enum(['core', 'extended']),
  confidence: confidenceSchema,
  sources: sourcesSchema,
}) satisfies z.ZodType<BlankRecord>;
