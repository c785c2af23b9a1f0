import { readFileSync } from 'node:fs';
import { Ajv2020 } from 'ajv/dist/2020.js';

const path = new URL('../../seeds/schema/report.schema.json', import.meta.url);
const validate = new Ajv2020({ strict: true, allErrors: true }).compile(
  JSON.parse(readFileSync(path, 'utf8')),
);

/** What the report's JSON Schema (draft 2020-12) has against a document: one line per fault, none for a good one. */
export function findSchemaFaults(document: unknown): readonly string[] {
  if (validate(document)) return [];
  return (validate.errors ?? []).map(({ instancePath, message }) => `${instancePath} ${message}`);
}
