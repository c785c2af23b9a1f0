import type { Pressing } from './pressing.ts';
import { DEFECTS, PRESSURES } from './vocabulary.ts';

type Fields = Readonly<Record<string, unknown>>;
type Test = (value: unknown) => boolean;

const MAX_TEXT = 2000;
const isText: Test = (value) => typeof value === 'string' && value !== '' && value.length <= MAX_TEXT;
const isSha256: Test = (value) => typeof value === 'string' && /^[0-9a-f]{64}$/.test(value);
const isTime: Test = (value) =>
  typeof value === 'string' && /^\d{4}-\d\d-\d\d(?:T\d\d:\d\d:\d\d(?:\.\d+)?Z)?$/.test(value);
const isUpTo =
  (most: number): Test =>
  (value) =>
    typeof value === 'number' && value > 0 && value <= most;
const isOneOf =
  (words: readonly unknown[]): Test =>
  (value) =>
    words.includes(value);
const orLeftOut =
  (test: Test): Test =>
  (value) =>
    value === undefined || test(value);

function isRecord(fields: Readonly<Record<string, Test>>): Test {
  const tests = Object.entries(fields);
  return (value) => {
    if (typeof value !== 'object' || value === null || Array.isArray(value)) return false;
    for (const [name, test] of tests) if (!test((value as Fields)[name])) return false;
    return true;
  };
}

const hasNoOther =
  (names: readonly string[]): Test =>
  (value) =>
    Object.keys(value as Fields).every((name) => names.includes(name));

const isDegrees = isRecord({ value: isUpTo(1000), unit: isOneOf(['C', 'F']) });
const isTemperature: Test = (value) => isDegrees(value) && hasNoOther(['value', 'unit'])(value);
const isDefect = isOneOf(Object.keys(DEFECTS));

const holds = isRecord({
  schemaVersion: isOneOf([1]),
  at: isTime,
  blank: isRecord({
    id: isText,
    name: orLeftOut(isText),
    lot: orLeftOut(isText),
    measured: orLeftOut(isText),
  }),
  art: orLeftOut(isRecord({ file: isText, sha256: isSha256 })),
  printer: orLeftOut(isText),
  paper: orLeftOut(isText),
  recipe: isRecord({
    temperature: orLeftOut(isTemperature),
    platenTemperature: orLeftOut(isTemperature),
    timeS: orLeftOut(isUpTo(86_400)),
    pressure: orLeftOut(isOneOf(PRESSURES)),
  }),
  result: isOneOf([1, 2, 3, 4, 5]),
  defects: (value) => Array.isArray(value) && value.length <= 100 && value.every(isDefect),
  photo: orLeftOut(isRecord({ file: isText, sha256: (value) => value === null || isSha256(value) })),
  note: orLeftOut(isText),
});

/**
 * Is this parsed JSON a record? The verdict of the schema, ten times as fast and without loading its library: a ledger of
 * 100,000 lines is read at each start. What is wrong the schema tells; that both agree is a law of the tests.
 */
export function isPressing(json: unknown): json is Pressing {
  return holds(json);
}
