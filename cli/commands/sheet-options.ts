import {
  BlankcheckError,
  MOST_COPIES,
  parseNonNegativeLength,
  parseSize,
  type SheetLayout,
} from '../../src/index.ts';
import type { TypedOptions } from '../arguments.ts';

/** Cut apart with a knife, pieces want this much between them (common practice, no source). */
const DEFAULT_GUTTER_MM = 3;

/** How pieces lie beside each other. @throws BlankcheckError of kind `usage`. */
export function readLayout({ gutter, platen }: TypedOptions): SheetLayout {
  return { gutterMm: readGutter(gutter), ...readPlaten(platen) };
}

/** `--gutter`, 3 mm when left out. @throws BlankcheckError of kind `usage` for what is no length of 0 or more. */
function readGutter(word: string | undefined): number {
  return word === undefined ? DEFAULT_GUTTER_MM : parseNonNegativeLength(word, '--gutter');
}

/** `--platen`. @throws BlankcheckError of kind `usage` for what is no size with two sides. */
function readPlaten(word: string | undefined): {
  readonly platenMm?: { width: number; height: number };
} {
  if (word === undefined) return {};
  const { kind, widthMm, heightMm } = parseSize(word, '--platen');
  if (kind === 'round')
    throw new BlankcheckError('bad-size', `Expected two sides for --platen, received "${word}".`);
  return { platenMm: { width: widthMm, height: heightMm } };
}

/** `--copies`, 1 when left out. @throws BlankcheckError `bad-option` for what is no whole number from 1. */
export function readCopies(word: string | undefined): number {
  if (word === undefined) return 1;
  const copies = /^\d+$/.test(word.trim()) ? Number(word) : Number.NaN;
  if (copies >= 1 && copies <= MOST_COPIES) return copies;
  throw new BlankcheckError(
    'bad-option',
    `Expected a whole number from 1 to ${MOST_COPIES} for --copies, received "${word}".`,
  );
}
