import { halveCells, type LightnessCells } from '../raster/lightness-cells.ts';
import { findLattice, type Lattice, type Shift } from './lattice.ts';
import { measureLocalContrast } from './local-contrast.ts';
import { measureSelfLikeness } from './self-likeness.ts';

/** Something half transparent that comes back again and again over art which does not. */
export interface RepeatedOverlay {
  /** From one to the next, in cells: two directions, the longer first. */
  readonly steps: readonly [Shift, Shift];
  /** How many of them lie on the picture. */
  readonly times: number;
  /** How far its strokes stand out from what is around them, L*, mean. */
  readonly strength: number;
}

/** Limits of the search, tried on real pictures with and without an overlay (tests/rates; own choice). */
const LEAST = { score: 42, sameness: 1.8, agree: 0.7, through: 0.35, behind: 1 } as const;
/** At half the fineness a quarter of the work tells most art from overlays: those of `tests/rates` have 13.5 at least, nine tenths of art has less. */
const LEAST_AT_A_GLANCE = 12;
const GLANCE_CELLS = 256;
/** As much as on art beside the strokes, or a little more by chance: more comes of edges of the art itself. */
const MOST_THROUGH = 2;
/** Places of a repeat that are told apart along each side: one for one and a half cells. */
const PLACES = { least: 8, most: 40, cells: 1.5 } as const;
/** Correlation from which two repeats look alike (own choice). */
const ALIKE = 0.1;
/** Variance of contrast below which a repeat is flat, L* squared: rounding to 8 bits gives less (own choice). */
const FLAT = 0.02;
/** Of the root mean square of all places: above is a stroke, below is none (own choice). */
const STROKE = 1.5;
const NO_STROKE = 0.7;

/**
 * The repeated overlay over a picture of cells; null where there is none. It repeats exactly, stands out over the same
 * art only a little, and lets that art through: art that repeats itself, as a pattern does, is the same at each repeat
 * on its strokes and beside them, and is none. Sides under 64 cells hold no three repeats and are null.
 */
export function findRepeatedOverlay(cells: LightnessCells): RepeatedOverlay | null {
  if (Math.min(cells.width, cells.height) < 64) return null;
  if (Math.max(cells.width, cells.height) > GLANCE_CELLS && !mayRepeat(halveCells(cells))) return null;
  const contrast = measureLocalContrast(cells);
  const lattice = findLattice(measureSelfLikeness(cells, contrast));
  if (lattice === null || lattice.score < LEAST.score) return null;
  const fold = foldOnto(lattice.steps, cells, contrast);
  const isOverlay =
    fold.sameness >= LEAST.sameness &&
    fold.agree >= LEAST.agree &&
    fold.behind >= LEAST.behind &&
    fold.through >= LEAST.through &&
    fold.through <= MOST_THROUGH;
  return isOverlay ? { steps: lattice.steps, times: fold.times, strength: fold.strength } : null;
}

function mayRepeat(cells: LightnessCells): boolean {
  const lattice = findLattice(measureSelfLikeness(cells, measureLocalContrast(cells)));
  return lattice !== null && lattice.score >= LEAST_AT_A_GLANCE;
}

interface Fold {
  /** Repeats that lie on the picture for the most part and are not flat. */
  readonly times: number;
  /** Share of those that look like the others. */
  readonly agree: number;
  /** Variance of the mean of all repeats over that which chance gives: the variance of one, divided by their number. */
  readonly sameness: number;
  /** Standard deviation of L* from repeat to repeat: of places without a stroke, and on strokes as a share of that. */
  readonly behind: number;
  readonly through: number;
  readonly strength: number;
}

/** Where each cell lies within a repeat, and in which; repeats of two halves like the fields of a chessboard. */
interface Places {
  /** Places of a half: those of the other follow. */
  readonly half: number;
  readonly placeOf: Int32Array;
  readonly repeatOf: Int32Array;
  readonly repeats: number;
}

function findPlaces([long, short]: Lattice['steps'], { width, height }: LightnessCells): Places {
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

/** Lays all repeats over one another, in two halves. */
function foldOnto(steps: Lattice['steps'], cells: LightnessCells, contrast: Float64Array): Fold {
  const { width, height, values } = cells;
  const places = findPlaces(steps, cells);
  const { half, placeOf } = places;
  const sums = new Float64Array(2 * half);
  const squares = new Float64Array(2 * half);
  const lightness = new Float64Array(2 * half);
  const lightnessSquares = new Float64Array(2 * half);
  const counts = new Float64Array(2 * half);
  for (let cell = 0; cell < placeOf.length; cell += 1) {
    const place = placeOf[cell]!;
    const [value, light] = [contrast[cell]!, values[cell]!];
    sums[place]! += value;
    squares[place]! += value * value;
    counts[place]! += 1;
    lightness[place]! += light;
    lightnessSquares[place]! += light * light;
  }
  const area = Math.abs(steps[0][0] * steps[1][1] - steps[0][1] * steps[1][0]);
  const expected = sums.map((_, place) => {
    const other = (place + half) % (2 * half);
    return sums[other]! / Math.max(1, counts[other]!);
  });
  const likenesses = listLikenesses(places, contrast, expected, area / 2);
  const times = (width * height) / area;
  const of = (list: Float64Array, i: number) => list[i]! + list[half + i]!;
  const variance = squares.reduce((sum, square) => sum + square, 0) / contrast.length;
  const means = Float64Array.from({ length: half }, (_, i) => of(sums, i) / Math.max(1, of(counts, i)));
  const ofMeans = means.reduce((sum, mean, i) => sum + of(counts, i) * mean * mean, 0) / contrast.length;
  const deviation = (i: number) =>
    Math.sqrt(Math.max(0, of(lightnessSquares, i) / of(counts, i) - (of(lightness, i) / of(counts, i)) ** 2));
  const well = [...means.keys()].filter((i) => of(counts, i) >= 3);
  const strokes = well.filter((i) => Math.abs(means[i]!) > STROKE * Math.sqrt(ofMeans));
  const behind = meanOf(
    well.filter((i) => Math.abs(means[i]!) < NO_STROKE * Math.sqrt(ofMeans)).map(deviation),
  );
  return {
    times: likenesses.length,
    agree: meanOf(likenesses.map((likeness) => (likeness > ALIKE ? 1 : 0))),
    sameness: (ofMeans / variance) * times,
    behind,
    through: lowTenth(strokes.map(deviation)) / behind,
    strength: meanOf(strokes.map((i) => Math.abs(means[i]!))),
  };
}

/** Correlation of each repeat of more than `least` cells with what is expected at its places; of flat ones none. */
function listLikenesses(
  { placeOf, repeatOf, repeats }: Places,
  contrast: Float64Array,
  expected: Float64Array,
  least: number,
): number[] {
  const products = new Float64Array(repeats);
  const own = new Float64Array(repeats);
  const others = new Float64Array(repeats);
  const counts = new Float64Array(repeats);
  for (let cell = 0; cell < placeOf.length; cell += 1) {
    const repeat = repeatOf[cell]!;
    const [value, wanted] = [contrast[cell]!, expected[placeOf[cell]!]!];
    products[repeat]! += value * wanted;
    own[repeat]! += value * value;
    others[repeat]! += wanted * wanted;
    counts[repeat]! += 1;
  }
  return [...counts.keys()]
    .filter((i) => counts[i]! > least && own[i]! >= FLAT * counts[i]!)
    .map((i) => products[i]! / Math.sqrt(own[i]! * others[i]! || 1));
}

/** Which of the parts along a side of a repeat a share of 0 to below 1 falls into. */
function partOf(share: number, side: number): number {
  return Math.min(side - 1, Math.floor(share * side));
}

/** What a tenth of the values lies below: the middle of strokes, where nothing beside them is mixed in; 0 of none. */
function lowTenth(values: readonly number[]): number {
  return [...values].sort((a, b) => a - b)[Math.floor(values.length / 10)] ?? 0;
}

/** 0 of none. */
function meanOf(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / Math.max(1, values.length);
}
