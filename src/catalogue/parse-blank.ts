import { blankFileSchema } from './blank-schema.ts';
import type { RecordFault } from './record-fault.ts';
import { showValue } from './record-fault.ts';
import type { BlankRecord } from './records.ts';
import { listSchemaFaults } from './schema-faults.ts';

/** The record that a JSON value holds, or what is wrong with its fields one by one. */
export type ParsedBlank =
  | { readonly blank: BlankRecord }
  | { readonly blank: null; readonly faults: readonly RecordFault[] };

/** Only looks at each field by itself. A `$schema` that the file names for an editor is left out of the record. */
export function parseBlank(json: unknown): ParsedBlank {
  if (typeof json !== 'object' || json === null) return notOne(showValue(json));
  if (Array.isArray(json) || 'blanks' in json) return notOne('a list of them');
  const parsed = blankFileSchema.safeParse(json);
  if (!parsed.success) return { blank: null, faults: listSchemaFaults(parsed.error.issues, json, knownKeys) };
  const { $schema: _, ...blank } = parsed.data;
  return { blank };
}

function notOne(found: string): ParsedBlank {
  return { blank: null, faults: [{ field: '', expected: 'one blank as a JSON object', found }] };
}

/** Keys of the record, or of the part of it that the path leads to. */
function knownKeys(path: readonly PropertyKey[]): readonly string[] {
  const { outline, wrap, printable } = blankFileSchema.shape;
  const parts = { outline, wrap, printable };
  const [first] = path;
  if (first === undefined) return Object.keys(blankFileSchema.shape);
  if (first === 'outline' || first === 'wrap' || first === 'printable') {
    return Object.keys(parts[first].unwrap().shape);
  }
  return [];
}
