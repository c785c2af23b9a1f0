import type { Inspection } from '../formats/inspection.ts';
import { roundNumbers } from './round-numbers.ts';
import { escapeJsonText } from './visible-text.ts';

/** An inspection and the path that the file was given by. */
export interface InspectedFile extends Inspection {
  readonly path: string;
}

/**
 * Inspections as one JSON document (RFC 8259), with a newline at its end; fields and their order are fixed.
 * @see seeds/schema/inspections.schema.json, which every document fulfils.
 */
export function toInspectionsJson(results: readonly InspectedFile[]): string {
  const document = {
    schemaVersion: 1,
    results: results.map(({ path, sha256, format, verdict, error, changes, record, ...facts }) => ({
      file: { path, sha256, format },
      verdict,
      error,
      widthPx: facts.widthPx,
      heightPx: facts.heightPx,
      statedPpi: facts.statedPpi && roundNumbers(facts.statedPpi),
      trueSizeMm: facts.trueSizeMm && roundNumbers(facts.trueSizeMm),
      ...(facts.pages === undefined ? {} : { pages: facts.pages }),
      record,
      changes: roundNumbers(changes),
    })),
  };
  return `${escapeJsonText(JSON.stringify(document, null, 2))}\n`;
}
