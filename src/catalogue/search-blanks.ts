import { familyOf, findBlank, listBlanks } from './catalogue.ts';
import { editDistance } from './edit-distance.ts';
import type { BlankRecord } from './records.ts';
import { hasTypedSize, readTypedSizes } from './typed-sizes.ts';

/** How well a word fits a blank; the lower the better. */
const WHOLE_WORD = 0;
const WORD_OF_FAMILY = 0.5;
const SIZE = 1;
const BEGINNING = 2;
const MISTYPED = 3;

interface Searched {
  readonly blank: BlankRecord;
  /** Words of id and name, and of the family. */
  readonly own: ReadonlySet<string>;
  readonly all: ReadonlySet<string>;
}

/**
 * The blanks that every word fits: by a word of id, name or family, by its beginning, or by a size in mm or inches
 * (`200mm`, `8in`, `200x150mm`, `8x10`, `11oz`). A word without digits that fits nothing is taken for mistyped.
 * Best fits first, then by id. No words: all blanks.
 */
export function searchBlanks(words: readonly string[]): readonly BlankRecord[] {
  const asked = splitWords(words.join(' '));
  const catalogue = listBlanks().map(prepare);
  const graders = asked.map((word) => graderFor(word, catalogue));
  return catalogue
    .map(({ blank, ...searched }) => ({
      blank,
      grades: graders.map((grade) => grade({ blank, ...searched })),
    }))
    .filter(({ grades }) => grades.every((grade) => grade < Infinity))
    .map(({ blank, grades }) => ({ blank, sum: grades.reduce((total, grade) => total + grade, 0) }))
    .sort((a, b) => a.sum - b.sum || (a.blank.id < b.blank.id ? -1 : 1))
    .map(({ blank }) => blank);
}

type Grader = (searched: Searched) => number;

function graderFor(word: string, catalogue: readonly Searched[]): Grader {
  const exact: Grader = (searched) => gradeExactly(word, searched);
  const known = catalogue.some((searched) => exact(searched) < Infinity);
  // A word that the catalogue knows is no mistake: `slate` must not find plates.
  if (known || /\d/.test(word)) return exact;
  return ({ all }) => gradeMistyped(word, all);
}

function gradeExactly(word: string, { blank, own, all }: Searched): number {
  if (blank.id === word || own.has(word)) return WHOLE_WORD;
  if (hasTypedSize(blank, readTypedSizes(word))) return SIZE;
  if (all.has(word)) return WORD_OF_FAMILY;
  if (/^\d+(\.\d+)?$/.test(word))
    return [...own].some((token) => startsWithNumber(token, word)) ? SIZE : Infinity;
  if (/\d/.test(word)) return Infinity;
  return [...all].some((token) => token.startsWith(word)) ? BEGINNING : Infinity;
}

/** `8` is the number of `8in` and of `8x10`, and not of `80mm`. */
function startsWithNumber(token: string, number: string): boolean {
  return token.split(/[a-z]+/).includes(number);
}

/** One slip in words of four to seven letters, two in longer ones; shorter ones have too many neighbours. */
function gradeMistyped(word: string, tokens: ReadonlySet<string>): number {
  const slips = word.length < 4 ? 0 : word.length < 8 ? 1 : 2;
  let least = Infinity;
  for (const token of tokens) {
    if (/\d/.test(token) || Math.abs(token.length - word.length) > slips) continue;
    least = Math.min(least, editDistance(word, token));
  }
  return least <= slips ? MISTYPED + least : Infinity;
}

function prepare(blank: BlankRecord): Searched {
  const family = familyOf(blank);
  const own = new Set(splitWords(`${blank.id.replaceAll('-', ' ')} ${blank.name} ${shapeWords(blank)}`));
  return {
    blank,
    own,
    all: new Set([...own, ...splitWords(`${family.id.replaceAll('-', ' ')} ${family.name}`)]),
  };
}

/** What makers call a shape that the name may not say. */
function shapeWords({ outline }: BlankRecord): string {
  if (outline?.shape === 'circle') return 'round';
  if (outline?.shape === 'ellipse') return 'oval';
  return outline?.shape.endsWith('rect') && outline.widthMm === outline.heightMm ? 'square' : '';
}

/** Words in small letters; a number takes its unit along (`8 in` and `8-inch` are `8in`), and `8 x 10` is one size. */
function splitWords(text: string): readonly string[] {
  return text
    .toLowerCase()
    .replaceAll('×', 'x')
    .replaceAll(/(\d)\s*"/g, '$1in')
    .replaceAll(/(\d)[\s-]*inch(?:es)?\b/g, '$1in')
    .replaceAll(/(\d)\s+(?=(?:mm|cm|in|oz|ml)\b)/g, '$1')
    .replaceAll(/(\d)(?:mm|cm|in)?\s*x\s*(?=\d)/g, '$1x')
    .split(/[^\p{L}\p{N}.-]+/u)
    .flatMap((word) => (findBlank(word) ? [word] : word.split('-')))
    .map((word) => word.replace(/^\.+(?=\D)|\.+$/g, ''))
    .filter((word) => word !== '');
}
