import { BlankcheckError, LIMITS, type LimitName, type Limits, nearestIds } from '../src/index.ts';

/**
 * The limits that the words of --limit replace, such as `maxPixels=400000000`; the last word for a name counts.
 * @throws BlankcheckError `bad-option` for an unknown name or a value that is no number above 0.
 */
export function parseLimits(words: readonly string[]): Partial<Limits> {
  return Object.fromEntries(words.map(parseLimit));
}

function parseLimit(word: string): [LimitName, number] {
  const [name = '', value = '', ...rest] = word.split('=');
  if (!isLimitName(name)) {
    const [near] = nearestIds(name, Object.keys(LIMITS), 1);
    throw new BlankcheckError(
      'bad-option',
      `Unknown limit "${name}" for --limit.\n${near ? `Did you mean ${near}? ` : ''}See blankcheck limits.`,
    );
  }
  const number = Number(value);
  if (rest.length > 0 || !/^\d+$/.test(value) || !(number > 0) || !Number.isSafeInteger(number)) {
    throw new BlankcheckError(
      'bad-option',
      `Expected a whole number of ${LIMITS[name].unit} above 0 for --limit ${name}, received "${word}".\nWrite it as ${name}=${LIMITS[name].value}.`,
    );
  }
  return [name, number];
}

function isLimitName(name: string): name is LimitName {
  return Object.hasOwn(LIMITS, name);
}
