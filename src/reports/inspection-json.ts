import type { InspectedFile } from './inspection.ts';
import { roundNumbers } from './round-numbers.ts';
import { escapeJsonText } from './visible-text.ts';

/**
 * What files are as one JSON document (RFC 8259), with a newline at its end; fields and their order are fixed.
 * @see seeds/schema/inspection.schema.json, which every document fulfils.
 */
export function toInspectionJson(files: readonly InspectedFile[]): string {
  const document = {
    schemaVersion: 1,
    results: files.map(({ path, inspection, error }) => ({
      path,
      verdict: verdictOf(inspection),
      error,
      file: inspection && {
        format: inspection.format,
        sha256: inspection.sha256,
        widthPx: inspection.widthPx,
        heightPx: inspection.heightPx,
        statedPpi: inspection.statedPpi && roundNumbers(inspection.statedPpi),
        statedMm: inspection.statedMm && roundNumbers(inspection.statedMm),
      },
      record: inspection?.record ?? null,
      changes: inspection?.changes ?? [],
    })),
  };
  return `${escapeJsonText(JSON.stringify(document, null, 2))}\n`;
}

function verdictOf(inspection: InspectedFile['inspection']): string {
  if (inspection === null) return 'unreadable';
  if (inspection.record === null) return 'not-print-ready';
  return inspection.changes.length === 0 ? 'unchanged' : 'changed';
}
