import { roundNumbers } from './round-numbers.ts';
import type { SuitedArtwork } from './suits.ts';
import { escapeJsonText } from './visible-text.ts';

/**
 * What artworks suit as one JSON document (RFC 8259), with a newline at its end; fields and their order are fixed.
 * @see seeds/schema/suits.schema.json, which every document fulfils.
 */
export function toSuitsJson(results: readonly SuitedArtwork[]): string {
  const document = {
    schemaVersion: 1,
    results: results.map(({ path, sha256, format, error, blanks, leftOut }) => ({
      artwork: { path, sha256, format },
      error,
      blanks: roundNumbers(blanks),
      leftOut,
    })),
  };
  return `${escapeJsonText(JSON.stringify(document, null, 2))}\n`;
}
