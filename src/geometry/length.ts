import { BlankcheckError } from '../blankcheck-error.ts';

/** International inch, exactly (ISO 80000-3 note; international yard and pound agreement, 1959). */
export const MM_PER_INCH = 25.4;

/** Millimetres per unit. pt is the desktop publishing point, 1/72 in (CSS Values 4, 6.2). */
const MM_PER_UNIT: Readonly<Record<string, number>> = {
  mm: 1,
  cm: 10,
  in: MM_PER_INCH,
  inch: MM_PER_INCH,
  inches: MM_PER_INCH,
  '"': MM_PER_INCH,
  pt: MM_PER_INCH / 72,
};

const LENGTH = /^([+-]?(?:\d+(?:\.\d+)?|\.\d+))\s*(mm|cm|inch(?:es)?|in|"|pt)?$/i;

/**
 * Millimetres of a length such as `178mm`, `17.8cm`, `7in`, `7"` or `36pt`; may be negative.
 * `name` says in the message which option or field it was.
 * @throws BlankcheckError `length-without-unit` for a bare number, `bad-length` for anything else.
 */
export function parseLength(text: string, name: string): number {
  const match = LENGTH.exec(text.trim());
  const value = Number(match?.[1]);
  if (!match || !Number.isFinite(value)) {
    throw new BlankcheckError(
      'bad-length',
      `Expected a length with its unit for ${name} (such as 178mm, 17.8cm, 7in or 36pt), received "${text}".${tellComma(text)}`,
    );
  }
  const unit = match[2]?.toLowerCase();
  if (unit === undefined) {
    throw new BlankcheckError(
      'length-without-unit',
      `Expected a unit for ${name}, received "${text}": write ${value}mm (${formatInches(value)}) or ${value}in (${formatMillimetres(value * MM_PER_INCH)}).`,
    );
  }
  return value * MM_PER_UNIT[unit]!;
}

/** What to say of numbers that are written as much of the world does; nothing where there are none. */
export function tellComma(text: string): string {
  // Points before a comma stand between thousands.
  const points = text
    .replace(/\d[\d.]*(?=,\d)/g, (whole) => whole.replaceAll('.', ''))
    .replace(/(\d),(?=\d)/g, '$1.');
  return points === text ? '' : ` Write the decimal comma as a point: ${points}.`;
}

/** The same for a length above zero. @throws also `bad-length` for zero and below. */
export function parsePositiveLength(text: string, name: string): number {
  const mm = parseLength(text, name);
  if (mm <= 0)
    throw new BlankcheckError('bad-length', `Expected a length above 0 for ${name}, received "${text}".`);
  return mm;
}

/** A length of zero or more, in mm; otherwise as `parsePositiveLength`. @throws also `bad-length` below zero. */
export function parseNonNegativeLength(text: string, name: string): number {
  const mm = parseLength(text, name);
  if (mm < 0)
    throw new BlankcheckError(
      'bad-length',
      `Expected a length of 0 or more for ${name}, received "${text}".`,
    );
  return mm;
}

/** A number for people: enough decimals that a small value does not read as 0, no trailing zeros. */
function formatNumber(value: number, decimals: number): string {
  let digits = decimals;
  while (digits < 6 && value !== 0 && Math.abs(value) < 0.95 * 10 ** (1 - digits)) digits += 1;
  // 133.35 is 133.349999… as a double; the nudge rounds it as it is written.
  const text = (value * (1 + 1e-12)).toFixed(digits);
  const trimmed = text.includes('.') ? text.replace(/\.?0+$/, '') : text;
  return trimmed === '-0' ? '0' : trimmed;
}

/** `200 mm`: a tenth of a millimetre, finer for small values. */
export function formatMillimetres(mm: number): string {
  return `${formatNumber(mm, 1)} mm`;
}

/** `7.87 in` from millimetres: a hundredth of an inch, finer for small values. */
function formatInches(mm: number): string {
  return `${formatNumber(mm / MM_PER_INCH, 2)} in`;
}

/** A length for people in both units: `177.8 mm (7 in)`. */
export function formatLength(mm: number): string {
  return `${formatMillimetres(mm)} (${formatInches(mm)})`;
}

/** A size for people in both units: `200 x 150 mm (7.87 x 5.91 in)`. */
export function formatSize(widthMm: number, heightMm: number): string {
  const inches = [widthMm, heightMm].map((mm) => formatNumber(mm / MM_PER_INCH, 2));
  return `${formatNumber(widthMm, 1)} x ${formatNumber(heightMm, 1)} mm (${inches.join(' x ')} in)`;
}
