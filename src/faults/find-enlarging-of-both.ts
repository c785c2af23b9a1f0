import { type LumaLines, readLumaLines } from '../raster/luma-lines.ts';
import type { Raster } from '../raster/raster.ts';
import { type Enlarging, findEnlarging, isEnlargedBy } from './find-enlarging.ts';

/** What each direction of a picture says; null where it says nothing. */
export interface EnlargingOfBoth {
  readonly x: Enlarging | null;
  readonly y: Enlarging | null;
}

/** Rows, and columns, that are looked at (own choice: a patch of each, and periods over all). */
const MOST_LINES = 128;
/** Estimates of the two directions that differ by less are one: what an estimate may be off by. */
const SAME = 1.2;
/** Where one direction has steps as sharp as its pixels, the other was not enlarged either: by less than this nobody stretches art one way (own choice, by the tables). */
const ONE_WAY = 2.2;

interface Seen {
  readonly lines: LumaLines;
  readonly found: Enlarging | null;
}

/**
 * By how much a gray or rgb picture was enlarged along x and along y. Enlarging nearly always has one factor along both, so
 * what one direction says is held against the other where that says nothing or something else: art may be soft in one
 * direction, and a half or a third of a factor explains what the factor does.
 */
export function findEnlargingOfBoth(raster: Raster): EnlargingOfBoth {
  const [x, y] = [seeAlong(raster, 'x'), seeAlong(raster, 'y')];
  return { x: hear(x, y), y: hear(y, x) };
}

function seeAlong(raster: Raster, axis: 'x' | 'y'): Seen {
  const luma = readLumaLines(raster, axis, MOST_LINES);
  const found = findEnlarging(luma);
  if (found !== null || raster.model !== 'rgb') return { lines: luma, found };
  const green = readLumaLines(raster, axis, MOST_LINES, 'green');
  const seen = findEnlarging(green);
  // Compression leaves more of its own in one colour than in luma: that alone is no detail.
  return { lines: green, found: seen?.by === 'nothing' && !seen.isPlain ? null : seen };
}

/** What a direction says, having heard what the other does. */
function hear(own: Seen, other: Seen): Enlarging | null {
  const [found, heard] = [own.found, other.found];
  if (found !== null && heard !== null && isSame(found, heard)) return found;
  const isOpen = found === null || (found.by === 'interpolation' && (!found.isPlain || isMore(heard, found)));
  if (isOpen && heard?.by === 'interpolation' && isEnlargedBy(own.lines, heard.factor)) return heard;
  if (found === null || found.by === 'repeated-pixels') return found;
  // Neither of two that are unsure is believed against the other.
  if (found.by === 'nothing')
    return !found.isPlain && heard?.by === 'interpolation' && !heard.isPlain ? null : found;
  const isFine = heard?.by === 'nothing' && heard.isPlain;
  if (found.isPlain && !(isFine && found.factor < ONE_WAY)) return found;
  if (isFine) return heard;
  return isEnlargedBy(other.lines, found.factor) ? found : null;
}

function isMore(one: Enlarging | null, other: Enlarging): boolean {
  return one !== null && one.factor > other.factor;
}

function isSame(one: Enlarging, other: Enlarging): boolean {
  return Math.max(one.factor, other.factor) < SAME * Math.min(one.factor, other.factor);
}

/** Whether both directions are known and say the same. */
export function isSameOfBoth({ x, y }: EnlargingOfBoth): boolean {
  return x !== null && y !== null && isSame(x, y);
}
