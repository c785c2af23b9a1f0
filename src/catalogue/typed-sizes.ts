import { MM_PER_INCH } from '../geometry/length.ts';
import { findFlatSize } from './flat-size.ts';
import type { BlankRecord } from './records.ts';

/** A length as typed, and how far a rounded one may be from what is meant. */
interface TypedLength {
  readonly mm: number;
  readonly slackMm: number;
}

/** A length (`8in`, `200mm`) or the two sides of a size (`8x10`, `200x150mm`), once per unit that may be meant. */
export type TypedSizes = readonly (readonly TypedLength[])[];

const MM_PER_UNIT: Readonly<Record<string, number>> = { mm: 1, cm: 10, in: MM_PER_INCH };
const SIZE = /^(\d+(?:\.\d+)?)(?:x(\d+(?:\.\d+)?))?(mm|cm|in)?$/;

/** The readings of a word as a size: none when it is no size, or a bare number, which may be anything. */
export function readTypedSizes(word: string): TypedSizes {
  const match = SIZE.exec(word);
  if (!match) return [];
  const [, first = '', second, unit] = match;
  if (second === undefined && unit === undefined) return [];
  const numbers = second === undefined ? [first] : [first, second];
  const units = unit === undefined ? ['in', 'mm', 'cm'] : [unit];
  return units.map((name) => numbers.map((text) => toLength(text, name)));
}

/** Half the last decimal typed; for whole numbers half a millimetre, or 1/32 in, as makers round. */
function toLength(text: string, unit: string): TypedLength {
  const perUnit = MM_PER_UNIT[unit]!;
  const decimals = text.split('.')[1]?.length ?? 0;
  const ofWhole = unit === 'in' ? MM_PER_INCH / 32 : 0.5;
  const slackMm = decimals === 0 ? ofWhole : 0.5 * 10 ** -decimals * perUnit;
  return { mm: Number(text) * perUnit, slackMm: slackMm + 1e-9 };
}

/** True when a side, a diameter or the print height is the typed length, or the two sides are the typed size either way round. */
export function hasTypedSize(blank: BlankRecord, readings: TypedSizes): boolean {
  const lengths = lengthsOf(blank);
  const size = findFlatSize(blank);
  return readings.some(([first, second]) => {
    if (first === undefined) return false;
    if (second === undefined) return lengths.some((length) => near(length, first));
    if (!size) return false;
    const { widthMm, heightMm } = size;
    return (
      (near(widthMm, first) && near(heightMm, second)) || (near(widthMm, second) && near(heightMm, first))
    );
  });
}

function near(mm: number, typed: TypedLength): boolean {
  return Math.abs(mm - typed.mm) <= typed.slackMm;
}

function lengthsOf(blank: BlankRecord): readonly number[] {
  const size = findFlatSize(blank);
  const sides = size ? [size.widthMm, size.heightMm] : [];
  if (!blank.wrap) return sides;
  const { topDiameterMm, bottomDiameterMm, printHeightMm } = blank.wrap;
  return [...sides, topDiameterMm, bottomDiameterMm, printHeightMm];
}
