import type { PrinterRecord } from './printer-record.ts';
import { printerFileSchema } from './printer-schema.ts';
import { showValue } from './record-fault.ts';
import { listSchemaFaults, type PlacedFault } from './schema-faults.ts';

/** The record that a JSON value holds, or what is wrong with its fields one by one. */
export type ParsedPrinter =
  | { readonly printer: PrinterRecord }
  | { readonly printer: null; readonly faults: readonly PlacedFault[] };

/** Only looks at each field by itself. A `$schema` that the file names for an editor is left out of the record. */
export function parsePrinter(json: unknown): ParsedPrinter {
  if (typeof json !== 'object' || json === null || Array.isArray(json)) {
    const found = Array.isArray(json) ? 'a list' : showValue(json);
    return {
      printer: null,
      faults: [{ path: [], field: '', expected: 'one printer as a JSON object', found }],
    };
  }
  const parsed = printerFileSchema.safeParse(json);
  if (!parsed.success) return { printer: null, faults: listSchemaFaults(parsed.error.issues, json, keysAt) };
  const { $schema: _, ...printer } = parsed.data;
  return { printer };
}

function keysAt(path: readonly PropertyKey[]): readonly string[] {
  const { marginsMm, scaleCorrection } = printerFileSchema.shape;
  if (path[0] === 'marginsMm') return Object.keys(marginsMm.unwrap().shape);
  if (path[0] === 'scaleCorrection') return Object.keys(scaleCorrection.unwrap().shape);
  return Object.keys(printerFileSchema.shape);
}
