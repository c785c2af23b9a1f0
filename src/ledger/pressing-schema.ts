import * as z from 'zod';
import { DEFECTS, type Defect, PRESSURES } from './vocabulary.ts';

const text = z.string().min(1).max(2000);
const sha256 = z.string().regex(/^[0-9a-f]{64}$/);
const temperature = z.strictObject({
  /** No press comes near the end of this range (own choice); only slips do. */
  value: z.number().positive().max(1000),
  unit: z.enum(['C', 'F']),
});

/** One line of a ledger. Fields that this version does not know are kept: a ledger outlives versions. */
export const pressingSchema = z.looseObject({
  schemaVersion: z.literal(1),
  at: z
    .string()
    .regex(/^\d{4}-\d\d-\d\d(?:T\d\d:\d\d:\d\d(?:\.\d+)?Z)?$/)
    .describe('when it was pressed: an instant in UTC, or the day alone (ISO 8601)'),
  blank: z.looseObject({
    id: text.describe('id of the catalogue, or the size'),
    name: z.exactOptional(text),
    lot: z.exactOptional(text),
    measured: z.exactOptional(text).describe('real size of the piece, as --measured takes it'),
  }),
  art: z.exactOptional(
    z.looseObject({
      file: text,
      sha256: sha256.describe('of the artwork; of a print-ready file, of the artwork that it was made from'),
    }),
  ),
  printer: z.exactOptional(text),
  paper: z.exactOptional(text),
  recipe: z.looseObject({
    temperature: z.exactOptional(temperature).describe('as the press was set'),
    platenTemperature: z.exactOptional(temperature).describe('as measured on the platen'),
    timeS: z.exactOptional(z.number().positive().max(86_400)).describe('seconds'),
    pressure: z.exactOptional(z.enum(PRESSURES)),
  }),
  result: z.int().min(1).max(5).describe('1: lost, 5: as good as it gets'),
  defects: z.array(z.enum(Object.keys(DEFECTS) as [Defect, ...Defect[]])).max(100),
  photo: z.exactOptional(
    z.looseObject({
      file: text,
      sha256: z.nullable(sha256).describe('null where the file was not there'),
    }),
  ),
  note: z.exactOptional(text),
});

/** JSON Schema (draft 2020-12) of a line, as the text of its file in seeds/schema. */
export function writePressingSchema(): string {
  return `${JSON.stringify(z.toJSONSchema(pressingSchema), null, 2)}\n`;
}
