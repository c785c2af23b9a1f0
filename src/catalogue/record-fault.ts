/** What is wrong with one field of a record: where it stands, what would be right, what is there. */
export interface RecordFault {
  /** As in `outline.widthMm` or `holes[2].xMm`; empty for the record itself. */
  readonly field: string;
  readonly expected: string;
  readonly found: string;
}

/** `outline.pointsMm[3][0]` from the parts of a path. */
export function fieldName(path: readonly PropertyKey[]): string {
  return path.reduce<string>(
    (name, part) =>
      typeof part === 'number' ? `${name}[${part}]` : name === '' ? String(part) : `${name}.${String(part)}`,
    '',
  );
}

/** A value as a message shows it: its JSON, shortened; `nothing` where it is not there. */
export function showValue(value: unknown): string {
  if (value === undefined) return 'nothing';
  if (typeof value === 'number') return String(value);
  const json = JSON.stringify(value) ?? String(value);
  return json.length > 60 ? `${json.slice(0, 57)}...` : json;
}

/** One fault as part of a sentence. */
export function describeFault({ field, expected, found }: RecordFault): string {
  return `${field === '' ? 'the record' : field}: expected ${expected}, found ${found}`;
}
