import { BlankcheckError } from '../blankcheck-error.ts';
import { parsePositiveLength, tellComma } from './length.ts';

/** A round body as it was measured; what was not measured is left out. mm. */
export interface MeasuredBody {
  readonly kind: 'body';
  readonly topDiameterMm?: number;
  readonly bottomDiameterMm?: number;
  /** Of the print. */
  readonly heightMm?: number;
}

/** What a maker may measure of a body, and how much of a diameter that is. */
const KEYS: Readonly<Record<string, (mm: number) => Omit<MeasuredBody, 'kind'>>> = {
  top: (mm) => ({ topDiameterMm: mm }),
  bottom: (mm) => ({ bottomDiameterMm: mm }),
  height: (mm) => ({ heightMm: mm }),
  strip: (mm) => ({ topDiameterMm: mm / Math.PI, bottomDiameterMm: mm / Math.PI }),
  'top-strip': (mm) => ({ topDiameterMm: mm / Math.PI }),
  'bottom-strip': (mm) => ({ bottomDiameterMm: mm / Math.PI }),
};

const FORM =
  'top:89mm,bottom:70mm,height:140mm (diameters), or strip:232mm,height:208mm (length of a paper strip that goes once round; top-strip and bottom-strip for a tapered body)';

/** True where the text can only be meant as the measures of a round body. */
export function looksLikeMeasuredBody(text: string): boolean {
  return /^\s*[a-z-]+\s*:/i.test(text) && !/^\s*round:/i.test(text);
}

/** Reads the measures of a round body. @throws BlankcheckError `bad-size`, `length-without-unit`, `bad-length`. */
export function parseMeasuredBody(text: string, name: string): MeasuredBody {
  // Behind the comma between two measures there is a word.
  const comma = tellComma(text);
  if (comma !== '')
    throw new BlankcheckError('bad-size', `Expected ${name} as ${FORM}, received "${text}".${comma}`);
  const seen = new Set<string>();
  let body: Omit<MeasuredBody, 'kind'> = {};
  for (const part of text.split(',')) {
    const [key = '', ...rest] = part.split(':');
    const word = key.trim().toLowerCase();
    const read = Object.hasOwn(KEYS, word) ? KEYS[word]! : undefined;
    if (!read || rest.length !== 1)
      throw new BlankcheckError('bad-size', `Expected ${name} as ${FORM}, received "${part.trim()}".`);
    const more = read(parsePositiveLength(rest[0]!.trim(), `${name} ${word}`));
    for (const field of Object.keys(more)) {
      if (seen.has(field))
        throw new BlankcheckError('bad-size', `${name} says the same measure twice: "${text}".`);
      seen.add(field);
    }
    body = { ...body, ...more };
  }
  return { kind: 'body', ...body };
}
