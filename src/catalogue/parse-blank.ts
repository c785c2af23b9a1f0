import type * as z from 'zod';
import { blankFileSchema } from './blank-schema.ts';
import { nearestIds } from './nearest-ids.ts';
import type { RecordFault } from './record-fault.ts';
import { fieldName, showValue } from './record-fault.ts';
import type { BlankRecord } from './records.ts';

type Issue = z.core.$ZodIssue;

/** The record that a JSON value holds, or what is wrong with its fields one by one. */
export type ParsedBlank =
  | { readonly blank: BlankRecord }
  | { readonly blank: null; readonly faults: readonly RecordFault[] };

/** Only looks at each field by itself. A `$schema` that the file names for an editor is left out of the record. */
export function parseBlank(json: unknown): ParsedBlank {
  if (typeof json !== 'object' || json === null) return notOne(showValue(json));
  if (Array.isArray(json) || 'blanks' in json) return notOne('a list of them');
  const parsed = blankFileSchema.safeParse(json);
  if (!parsed.success)
    return { blank: null, faults: parsed.error.issues.flatMap((issue) => toFaults(issue, json)) };
  const { $schema: _, ...blank } = parsed.data;
  return { blank };
}

function notOne(found: string): ParsedBlank {
  return { blank: null, faults: [{ field: '', expected: 'one blank as a JSON object', found }] };
}

function toFaults(issue: Issue, json: unknown): readonly RecordFault[] {
  if (issue.code === 'unrecognized_keys') return issue.keys.map((key) => unknownKey(key, issue.path, json));
  const found = showValue(valueAt(json, issue.path));
  return [{ field: fieldName(issue.path), expected: expectation(issue), found }];
}

function unknownKey(key: string, path: readonly PropertyKey[], json: unknown): RecordFault {
  const [nearest] = nearestIds(key, knownKeys(path), 1);
  return {
    field: fieldName([...path, key]),
    expected: nearest ? `no such field (meant ${nearest}?)` : 'no such field',
    found: showValue(valueAt(json, [...path, key])),
  };
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

function valueAt(json: unknown, path: readonly PropertyKey[]): unknown {
  return path.reduce<unknown>(
    (value, key) => (typeof value === 'object' && value !== null ? Reflect.get(value, key) : undefined),
    json,
  );
}

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
      return issue.path[0] === 'baseColour' ? 'a colour as #rrggbb' : 'a text on one line';
    case 'invalid_union':
      return 'one of "circle", "slot"';
    default:
      return issue.message;
  }
}

function nounOf(issue: Issue): string {
  const kind = issue.code === 'invalid_type' ? issue.expected : 'origin' in issue ? issue.origin : '';
  if (kind === 'number') return isLength(issue.path) ? 'a number of millimetres' : 'a number';
  if (kind === 'array' || kind === 'tuple') return 'a list';
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
