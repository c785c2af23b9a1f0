import type { LightnessCells } from '../raster/lightness-cells.ts';
import { areaOf, type LatticeSteps } from './lattice-points.ts';
import { findRepeatPlaces, type RepeatPlaces } from './repeat-places.ts';

// Own choices. Of the 36 made overlays of tests/rates 33 are found, of the 18 pictures without one none, with these values
// and with any from 0.05 to 0.1 for ALIKE, 0 to 0.1 for FLAT, 1.2 to 1.5 for STROKE, 0.5 to 0.9 for NO_STROKE and 1 to 10 for
// LEAST_CELLS, each by itself; 0.2 for ALIKE misses one more, 1.8 for STROKE four.
/** Correlation from which two repeats look alike. */
const ALIKE = 0.1;
/** Variance of contrast below which a repeat is flat, L* squared: rounding to 8 bits gives less. */
const FLAT = 0.02;
/** Of the root mean square of all places: above is a stroke, below is none. */
const STROKE = 1.5;
const NO_STROKE = 0.7;
/** Fewer at a place do not tell how much they differ. */
const LEAST_CELLS = 3;

/** What all repeats of a picture on a lattice have in common, and what not. */
export interface Fold {
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

/**
 * Lays all repeats over one another, in two halves, of which each says what is expected in the other. `contrast` is the
 * local contrast of the cells. Of a picture without any contrast `sameness` and `through` are NaN.
 */
export function foldOnto(steps: LatticeSteps, cells: LightnessCells, contrast: Float64Array): Fold {
  const places = findRepeatPlaces(steps, cells);
  const { half } = places;
  const sums = sumUp(places, cells.values, contrast);
  const area = areaOf(steps);
  const likenesses = listLikenesses(places, contrast, expectedFrom(sums, half), area / 2);
  const times = (cells.width * cells.height) / area;
  const counts = bothHalves(sums.counts);
  const variance = sumOf(sums.squares) / contrast.length;
  const means = bothHalves(sums.contrast);
  let squares = 0;
  for (let i = 0; i < half; i += 1) {
    means[i]! /= Math.max(1, counts[i]!);
    squares += counts[i]! * means[i]! * means[i]!;
  }
  const ofMeans = squares / contrast.length;
  const spread = Math.sqrt(ofMeans);
  const deviations = deviationsOf(bothHalves(sums.lightness), bothHalves(sums.lightnessSquares), counts);
  const onStrokes: number[] = [];
  const besideThem: number[] = [];
  const strengths: number[] = [];
  for (let i = 0; i < half; i += 1) {
    if (counts[i]! < LEAST_CELLS) continue;
    const strength = Math.abs(means[i]!);
    if (strength < NO_STROKE * spread) besideThem.push(deviations[i]!);
    if (strength <= STROKE * spread) continue;
    onStrokes.push(deviations[i]!);
    strengths.push(strength);
  }
  const behind = meanOf(besideThem);
  return {
    times: likenesses.length,
    agree: meanOf(likenesses.map((likeness) => (likeness > ALIKE ? 1 : 0))),
    sameness: (ofMeans / variance) * times,
    behind,
    through: lowTenth(onStrokes) / behind,
    strength: meanOf(strengths),
  };
}

/** Over all cells that lie at one place of a repeat, for the places of both halves. */
interface PlaceSums {
  readonly counts: Float64Array;
  readonly contrast: Float64Array;
  /** Of contrast. */
  readonly squares: Float64Array;
  readonly lightness: Float64Array;
  readonly lightnessSquares: Float64Array;
}

function sumUp(
  { half, placeOf }: RepeatPlaces,
  lightnessOf: LightnessCells['values'],
  contrastOf: Float64Array,
): PlaceSums {
  const counts = new Float64Array(2 * half);
  const contrast = new Float64Array(2 * half);
  const squares = new Float64Array(2 * half);
  const lightness = new Float64Array(2 * half);
  const lightnessSquares = new Float64Array(2 * half);
  for (let cell = 0; cell < placeOf.length; cell += 1) {
    const place = placeOf[cell]!;
    const value = contrastOf[cell]!;
    const light = lightnessOf[cell]!;
    counts[place]! += 1;
    contrast[place]! += value;
    squares[place]! += value * value;
    lightness[place]! += light;
    lightnessSquares[place]! += light * light;
  }
  return { counts, contrast, squares, lightness, lightnessSquares };
}

/** What the places of both halves come to together. */
function bothHalves(sums: Float64Array): Float64Array {
  const half = sums.length / 2;
  const both = sums.slice(0, half);
  for (let i = 0; i < half; i += 1) both[i]! += sums[half + i]!;
  return both;
}

/** Of each place, from its sums; NaN where nothing was counted. */
function deviationsOf(sums: Float64Array, squares: Float64Array, counts: Float64Array): Float64Array {
  const deviations = new Float64Array(counts.length);
  for (let i = 0; i < counts.length; i += 1)
    deviations[i] = Math.sqrt(Math.max(0, squares[i]! / counts[i]! - (sums[i]! / counts[i]!) ** 2));
  return deviations;
}

function sumOf(values: Float64Array): number {
  let sum = 0;
  for (const value of values) sum += value;
  return sum;
}

/** Mean contrast at each place, taken from the other half: no repeat is held against itself. */
function expectedFrom({ contrast, counts }: PlaceSums, half: number): Float64Array {
  const expected = new Float64Array(2 * half);
  for (let place = 0; place < expected.length; place += 1) {
    const other = (place + half) % (2 * half);
    expected[place] = contrast[other]! / Math.max(1, counts[other]!);
  }
  return expected;
}

/** Correlation of each repeat of more than `least` cells with what is expected at its places; of flat ones none. */
function listLikenesses(
  { placeOf, repeatOf, repeats }: RepeatPlaces,
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
    const value = contrast[cell]!;
    const wanted = expected[placeOf[cell]!]!;
    products[repeat]! += value * wanted;
    own[repeat]! += value * value;
    others[repeat]! += wanted * wanted;
    counts[repeat]! += 1;
  }
  return [...counts.keys()]
    .filter((i) => counts[i]! > least && own[i]! >= FLAT * counts[i]!)
    .map((i) => products[i]! / Math.sqrt(own[i]! * others[i]! || 1));
}

/** What a tenth of the values lies below: the middle of strokes, where nothing beside them is mixed in; 0 of none. */
function lowTenth(values: readonly number[]): number {
  return [...values].sort((a, b) => a - b)[Math.floor(values.length / 10)] ?? 0;
}

/** 0 of none. */
function meanOf(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / Math.max(1, values.length);
}
