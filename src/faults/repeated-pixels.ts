import type { LumaLines } from '../raster/luma-lines.ts';
import { findPixelGrid } from './pixel-grid.ts';

/** Changes that a grid of repeats must show before it is believed (own choice). */
const LEAST_CHANGES = 24;
const LEAST_FACTOR = 1.15;
const MOST_FACTOR = 16;
/** Tones of checkers, squared paper and small symbols are fewer (own choice). */
const MANY_TONES = 32;
/** Rounding puts a change at most a pixel from where its old pixel ends; both ends of the count are rounded too. */
const MOST_OFF = 1.5;
/** Of the ends of old pixels, so many show a change at least: a drawing has changes at multiples of its own grid (own choice). */
const LEAST_SHARE = 1 / 4;

/**
 * The factor by which pixels were repeated along the lines, exact to the pixel; null where they were not, or where there
 * are too few changes to tell. Every place at which any line changes counts: an enlarged picture changes only where one of its old
 * pixels ends, at distances of two neighbouring whole numbers; or, of flat art, at some of these places.
 */
export function findRepeatedPixels({ length, values }: LumaLines): number | null {
  const places: number[] = [];
  for (let i = 1; i < length; i += 1)
    if (
      values.some(
        (line) => line[i] !== line[i - 1] && !(Number.isNaN(line[i]!) && Number.isNaN(line[i - 1]!)),
      )
    )
      places.push(i);
  if (places.length < LEAST_CHANGES) return null;
  const gaps = places.slice(1).map((place, i) => place - places[i]!);
  const mean = (places.at(-1)! - places[0]!) / gaps.length;
  const isEven = places.every((place, i) => Math.abs(place - places[0]! - i * mean) < MOST_OFF);
  if (isEven) return mean >= LEAST_FACTOR && mean <= MOST_FACTOR ? mean : null;
  const grid = findPixelGrid(places, Math.min(MOST_FACTOR, Math.min(...gaps) + 1));
  return grid !== null && mean * LEAST_SHARE < grid ? grid : null;
}

/** Whether the lines have tones enough to be a picture, not a pattern that was drawn in squares. */
export function hasManyTones({ values }: LumaLines): boolean {
  const tones = new Set<number>();
  for (const line of values)
    for (const value of line) {
      if (!Number.isNaN(value)) tones.add(Math.round(value));
      if (tones.size >= MANY_TONES) return true;
    }
  return false;
}
