import { BlankcheckError } from '../blankcheck-error.ts';
import { formatSize, MM_PER_INCH, parseLength, parsePositiveLength, tellComma } from './length.ts';
import type { PointMm } from './rectangle.ts';

/** A size as a maker types it: `200x150mm`, `8x10in` or `round:95mm`. */
export interface TypedSize {
  readonly kind: 'rect' | 'round';
  readonly widthMm: number;
  readonly heightMm: number;
}

const RECT = /^([\d.]+)\s*(mm|cm|inch(?:es)?|in|"|pt)?\s*[x×]\s*([\d.]+)\s*(mm|cm|inch(?:es)?|in|"|pt)?$/i;

/** True where the text can only be meant as a size, a bare number too; then `parseSize` says what is wrong with it. */
export function looksLikeSize(text: string): boolean {
  return (
    /^round:|^[\d.,]+$/i.test(text) ||
    /^[\d.,]+\s*(mm|cm|inch(?:es)?|in|"|pt)?\s*[x×]\s*[\d.,]+\s*[a-z"]*$/i.test(text)
  );
}

/**
 * Reads `200x150mm`, `8inx10in` (one unit at the end counts for both) or `round:95mm`.
 * @throws BlankcheckError `length-without-unit` without a unit, `bad-size` for anything else.
 */
export function parseSize(text: string, name: string): TypedSize {
  const trimmed = text.trim();
  const round = /^round:(.*)$/i.exec(trimmed);
  if (round) {
    const diameterMm = parsePositiveLength(round[1]!, name);
    return { kind: 'round', widthMm: diameterMm, heightMm: diameterMm };
  }
  const bare = /^[\d.]+$/.test(trimmed) ? Number(trimmed) : Number.NaN;
  if (bare > 0) throw withoutUnit(text, name, `${bare}x${bare}`, bare, bare);
  const match = RECT.exec(trimmed);
  if (!match) {
    throw new BlankcheckError(
      'bad-size',
      `Expected a size for ${name} (such as 200x150mm, 8x10in or round:95mm), received "${text}".${tellComma(text)}`,
    );
  }
  const [, width = '', widthUnit, height = '', heightUnit] = match;
  if (heightUnit === undefined && widthUnit === undefined)
    throw withoutUnit(text, name, trimmed, Number(width), Number(height));
  return {
    kind: 'rect',
    widthMm: parsePositiveLength(width + (widthUnit ?? heightUnit), name),
    heightMm: parsePositiveLength(height + (heightUnit ?? widthUnit), name),
  };
}

function withoutUnit(
  text: string,
  name: string,
  size: string,
  width: number,
  height: number,
): BlankcheckError {
  const inInches = formatSize(width * MM_PER_INCH, height * MM_PER_INCH);
  return new BlankcheckError(
    'length-without-unit',
    `Expected a unit for ${name}, received "${text}": write ${size}mm, which is ${formatSize(width, height)}, or ${size}in, which is ${inInches}.`,
  );
}

/** Reads `2mm,-1mm`: right and down, as seen from the front. @throws BlankcheckError `bad-offset`. */
export function parseOffset(text: string, name: string): PointMm {
  const parts = text.split(',');
  // `2,5mm` is no two lengths of which one lacks its unit, but one with a decimal comma.
  const isOne = /^[+-]?\d+,\d+\s*[a-z"]+$/i.test(text.trim());
  if (parts.length !== 2 || isOne) {
    throw new BlankcheckError(
      'bad-offset',
      `Expected two lengths for ${name}, right and down (such as 2mm,-1mm), received "${text}".${parts.length > 2 || isOne ? tellComma(text) : ''}`,
    );
  }
  return { x: parseLength(parts[0]!, name), y: parseLength(parts[1]!, name) };
}
