import type { LightnessCells } from '../raster/lightness-cells.ts';
import type { LatticeSteps } from './lattice-points.ts';

/** Places of a repeat that are told apart along each side: one for one and a half cells (own choice). */
const PLACES = { least: 8, most: 40, cells: 1.5 } as const;

/** Where each cell lies within a repeat, and in which; repeats of two halves like the fields of a chessboard. */
export interface RepeatPlaces {
  /** Places of a half: those of the other follow. */
  readonly half: number;
  readonly placeOf: Int32Array;
  readonly repeatOf: Int32Array;
  readonly repeats: number;
}

/** The places of a picture's cells on a lattice of these steps, the first of which begins at the top left cell. */
export function findRepeatPlaces(
  [long, short]: LatticeSteps,
  { width, height }: LightnessCells,
): RepeatPlaces {
  const determinant = long[0] * short[1] - long[1] * short[0];
  const side = Math.max(
    PLACES.least,
    Math.min(PLACES.most, Math.round(Math.sqrt(Math.abs(determinant)) / PLACES.cells)),
  );
  const placeOf = new Int32Array(width * height);
  const repeatOf = new Int32Array(width * height);
  const numbers = new Map<number, number>();
  let [lastKey, lastNumber] = [Number.NaN, 0];
  for (let y = 0, cell = 0; y < height; y += 1)
    for (let x = 0; x < width; x += 1, cell += 1) {
      const along = (x * short[1] - y * short[0]) / determinant;
      const across = (y * long[0] - x * long[1]) / determinant;
      const [i, j] = [Math.floor(along), Math.floor(across)];
      placeOf[cell] = (((i + j) & 1) * side + partOf(along - i, side)) * side + partOf(across - j, side);
      // Of both numbers one: no picture of cells has so many repeats in a row.
      const key = i * 65536 + j;
      if (key !== lastKey) {
        lastNumber = numbers.get(key) ?? numbers.size;
        numbers.set(key, lastNumber);
        lastKey = key;
      }
      repeatOf[cell] = lastNumber;
    }
  return { half: side * side, placeOf, repeatOf, repeats: numbers.size };
}

/** Which of the parts along a side of a repeat a share of 0 to below 1 falls into. */
function partOf(share: number, side: number): number {
  return Math.min(side - 1, Math.floor(share * side));
}
