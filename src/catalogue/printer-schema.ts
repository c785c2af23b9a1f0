import * as z from 'zod';
import type { PrinterMargins, PrinterRecord } from './printer-record.ts';

/** Wider margins than this belong to no printer: a wrong unit. */
const marginMm = z.number().nonnegative().max(100);
const line = z
  .string()
  .min(1)
  .max(2000)
  .regex(/^\P{Cc}*$/u);
/** What calibration stores stays within 1 %; twice that is left to those who know better. */
const factor = z.number().min(0.98).max(1.02);

const marginsSchema = z.strictObject({
  left: marginMm,
  right: marginMm,
  lead: marginMm.describe('the edge that goes into the printer first: the top of a portrait page'),
  trail: marginMm,
}) satisfies z.ZodType<PrinterMargins>;

/** One printer as its owner writes it. */
export const printerSchema = z.strictObject({
  name: line,
  paper: line.describe('id of a sheet of seeds/papers.json, or a size such as 200x300mm'),
  marginsMm: z
    .exactOptional(marginsSchema)
    .describe('what stays bare of a portrait sheet; 6.35 each when left out'),
  ppi: z
    .exactOptional(z.number().min(1).max(2400))
    .describe('pixels per inch that the driver wants; --ppi wins, the blank does not'),
  scaleCorrection: z
    .exactOptional(
      z.strictObject({
        scan: factor.describe('across the sheet, along the way of the head'),
        feed: factor.describe('along the sheet, the way the paper goes'),
      }),
    )
    .describe('intended / printed length, as blankcheck calibrate stores it; 1 when left out'),
  profile: z
    .exactOptional(line)
    .describe('ICC file of this printer, paper and ink, from the folder of this file'),
  driverMirrors: z.exactOptional(z.boolean()).describe('the driver mirrors by itself; false when left out'),
  note: z.exactOptional(line),
}) satisfies z.ZodType<PrinterRecord>;

/** The same in its file, which may name its schema for an editor. */
export const printerFileSchema = printerSchema.extend({ $schema: z.exactOptional(z.string()) });
