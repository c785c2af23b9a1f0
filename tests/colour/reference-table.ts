import { readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Triple } from '../../src/colour/triple.ts';

const FOLDER = join(dirname(fileURLToPath(import.meta.url)), '../../fixtures/reference');

/** A row of a table under fixtures/reference, by the names of its columns; a name's second column is `<name> again`. */
export interface ReferenceRow {
  /** Throws where the table says NA or has no such column, so that no test passes on nothing. */
  number(column: string): number;
  /** `L`, `a` and `b` behind a prefix, or R, G and B. */
  triple(first: string, second: string, third: string): Triple;
  lab(prefix: string): Triple;
  text(column: string): string;
}

/** The rows of a reference table; what each column is stands in the README beside them. */
export function readReferenceTable(name: string): readonly ReferenceRow[] {
  const [header = '', ...lines] = readFileSync(join(FOLDER, name), 'utf8').trimEnd().split('\n');
  const columns = header
    .split('\t')
    .map((column, i, all) => (all.indexOf(column) < i ? `${column} again` : column));
  return lines.map((line) => {
    const fields = line.split('\t');
    const text = (column: string) => {
      const field = fields[columns.indexOf(column)];
      if (field === undefined) throw new Error(`${name} has no column ${column}`);
      return field;
    };
    const number = (column: string) => {
      const value = Number(text(column));
      if (!Number.isFinite(value)) throw new Error(`${name}, ${column}: ${text(column)} is no number`);
      return value;
    };
    const triple = (first: string, second: string, third: string): Triple => [
      number(first),
      number(second),
      number(third),
    ];
    return { number, triple, text, lab: (prefix) => triple(`${prefix}L`, `${prefix}a`, `${prefix}b`) };
  });
}
