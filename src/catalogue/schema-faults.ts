import type * as z from 'zod';
import { nearestIds } from './nearest-ids.ts';
import type { RecordFault } from './record-fault.ts';
import { fieldName, showValue } from './record-fault.ts';

type Issue = z.core.$ZodIssue;

/** What is wrong with one field, and the way to it. */
export interface PlacedFault extends RecordFault {
  readonly path: readonly PropertyKey[];
}

/** What a schema found wrong, in words of the record; `keysAt` lists the fields that may stand at a path. */
export function listSchemaFaults(
  issues: readonly Issue[],
  json: unknown,
  keysAt: (path: readonly PropertyKey[]) => readonly string[],
): readonly PlacedFault[] {
  return issues.flatMap((issue) => {
    const { path } = issue;
    if (issue.code === 'unrecognized_keys')
      return issue.keys.map((key) => unknownKey([...path, key], keysAt(path), json));
    const found = showValue(valueAt(json, path));
    return [{ path, field: fieldName(path), expected: expectation(issue), found }];
  });
}

function unknownKey(path: readonly PropertyKey[], known: readonly string[], json: unknown): PlacedFault {
  const [nearest] = nearestIds(String(path.at(-1)), known, 1);
  return {
    path,
    field: fieldName(path),
    expected: nearest ? `no such field (meant ${nearest}?)` : 'no such field',
    found: showValue(valueAt(json, path)),
  };
}

function valueAt(json: unknown, path: readonly PropertyKey[]): unknown {
  return path.reduce<unknown>(
    (value, key) => (typeof value === 'object' && value !== null ? Reflect.get(value, key) : undefined),
    json,
  );
}

const FORMATS: Readonly<Record<string, string>> = {
  baseColour: 'a colour as #rrggbb',
  at: 'a day such as 2026-03-14, or an instant such as 2026-03-14T15:00:00Z',
  sha256: '64 hex digits',
};

/** In words of the record, not of the schema library. */
function expectation(issue: Issue): string {
  const noun = nounOf(issue);
  switch (issue.code) {
    case 'invalid_type':
      return noun;
    case 'invalid_value':
      return `one of ${issue.values.map((value) => showValue(value)).join(', ')}`;
    case 'too_small':
      return `${noun} ${issue.inclusive ? 'of at least' : 'above'} ${issue.minimum}${countedOf(issue.origin)}`;
    case 'too_big':
      return `${noun} ${issue.inclusive ? 'of at most' : 'below'} ${issue.maximum}${countedOf(issue.origin)}`;
    case 'invalid_format':
      return FORMATS[String(issue.path.at(-1))] ?? 'a text on one line';
    case 'invalid_union':
      return 'one of "circle", "slot"';
    default:
      return issue.message;
  }
}

function nounOf(issue: Issue): string {
  const kind = issue.code === 'invalid_type' ? issue.expected : 'origin' in issue ? issue.origin : '';
  if (kind === 'number') return isLength(issue.path) ? 'a number of millimetres' : 'a number';
  if (kind === 'int') return 'a whole number';
  if (kind === 'array' || kind === 'tuple') return 'a list';
  if (kind === 'boolean') return 'true or false';
  return kind === 'string' ? 'a text' : 'an object';
}

/** `widthMm` and its like, and the coordinates of a polygon's points. */
function isLength(path: readonly PropertyKey[]): boolean {
  return path.some((key) => String(key).endsWith('Mm'));
}

function countedOf(origin: string): string {
  if (origin === 'string') return ' characters';
  return origin === 'array' ? ' entries' : '';
}
