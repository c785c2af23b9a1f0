import { MM_PER_INCH } from '../geometry/length.ts';
import { findFlatSize } from './flat-size.ts';
import type { BlankRecord } from './records.ts';

/**
 * Sizes are not guessed at, but makers round them: 1/32 in takes 7.87 for 200 mm and keeps 8 x 10 from 20 x 25 cm.
 */
const ROUNDING_MM = MM_PER_INCH / 32;

/** A searched word that is a length (`8in`, `200mm`) or a size (`8x10`, `200x150mm`), in mm; without unit both readings. */
export type TypedSizes = readonly (readonly number[])[];

const MM_PER_UNIT: Readonly<Record<string, number>> = { mm: 1, cm: 10, in: MM_PER_INCH };
const SIZE = /^(\d+(?:\.\d+)?)(?:x(\d+(?:\.\d+)?))?(mm|cm|in)?$/;

/** The readings of a word as a size: none when it is no size, or a bare number, which may be anything. */
export function readTypedSizes(word: string): TypedSizes {
  const match = SIZE.exec(word);
  if (!match) return [];
  const [, first = '', second, unit] = match;
  if (second === undefined && unit === undefined) return [];
  const numbers = second === undefined ? [Number(first)] : [Number(first), Number(second)];
  const units = unit === undefined ? ['in', 'mm', 'cm'] : [unit];
  return units.map((name) => numbers.map((value) => value * MM_PER_UNIT[name]!));
}

/** True when a side, a diameter or the print height is the typed length, or the two sides are the typed size either way round. */
export function hasTypedSize(blank: BlankRecord, readings: TypedSizes): boolean {
  const lengths = lengthsOf(blank);
  const size = findFlatSize(blank);
  const near = (a: number, b: number | undefined) => b !== undefined && Math.abs(a - b) <= ROUNDING_MM;
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

function lengthsOf(blank: BlankRecord): readonly number[] {
  const size = findFlatSize(blank);
  const sides = size ? [size.widthMm, size.heightMm] : [];
  if (!blank.wrap) return sides;
  const { topDiameterMm, bottomDiameterMm, printHeightMm } = blank.wrap;
  return [...sides, topDiameterMm, bottomDiameterMm, printHeightMm];
}
