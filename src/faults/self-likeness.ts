import type { LightnessCells } from '../raster/lightness-cells.ts';
import { correlate, type HalfSpectrum, measurePowers } from './power-spectrum.ts';

/** How like itself a picture is after a shift, whatever its colours and its large shapes. */
export interface SelfLikeness {
  /** Largest shifts that are told, cells: farther ones leave too little to compare. */
  readonly mostRight: number;
  readonly mostDown: number;
  /** Of a shift by whole cells right (also left, below 0) and down (also up), and a little beyond; no unit: see `spread`. */
  readonly at: (right: number, down: number) => number;
  /** Root mean square over all those shifts but none at all: what chance and the art give. */
  readonly spread: number;
}

/** Lines of a spectrum are judged against the mean of so many around them, each way (own choice). */
const AROUND = 7;
/** Of each side (own choice). */
const FARTHEST = 0.4;
/** A line counts for at most so many times what lies around it: one single wave is no picture (own choice). */
const MOST = 30;
/**
 * Share of the mean power that is added to what lies around each line, or rounding would count as much as art where there is
 * none (own choice: from 1e-7 to 1e-2 the same of the made overlays of tests/rates are found, with 0.1 one less).
 */
const LEAST_GROUND = 1e-3;
/** Who looks around a place looks so far beyond the largest shifts. */
const BEYOND = 3;

/**
 * Autocorrelation of the contrast of a picture whose spectrum was made even before: broad shapes give nothing, what
 * comes back in the same form gives a peak at its distance.
 */
export function measureSelfLikeness(size: LightnessCells, contrast: Float64Array): SelfLikeness {
  const spectrum = measurePowers(contrast, size, {
    width: powerAbove(size.width),
    height: powerAbove(size.height),
  });
  evenOut(spectrum);
  const [mostRight, mostDown] = [Math.floor(size.width * FARTHEST), Math.floor(size.height * FARTHEST)];
  const { width } = spectrum;
  const values = correlate(spectrum, Math.min(spectrum.height, mostDown + BEYOND + 1));
  const at = (right: number, down: number) =>
    down < 0
      ? values[-down * width + (-right & (width - 1))]!
      : values[down * width + (right & (width - 1))]!;
  let squares = 0;
  for (let down = 0; down <= mostDown; down += 1)
    for (let right = -mostRight; right <= mostRight; right += 1)
      if (right !== 0 || down !== 0) squares += at(right, down) ** 2;
  const spread = Math.sqrt(squares / ((mostDown + 1) * (2 * mostRight + 1) - 1));
  return { mostRight, mostDown, at, spread };
}

function powerAbove(size: number): number {
  return 2 ** Math.ceil(Math.log2(Math.max(2, size)));
}

/** Each power over the mean of those around it; the spectrum closes on itself. */
function evenOut(spectrum: HalfSpectrum): void {
  const { powers } = spectrum;
  const ground = averageAround(spectrum);
  const least = LEAST_GROUND * meanOfAll(spectrum);
  if (least === 0) return;
  for (let i = 0; i < powers.length; i += 1) powers[i] = Math.min(MOST, powers[i]! / (ground[i]! + least));
}

/** Of the whole spectrum, in which all columns but the first and the last stand twice. */
function meanOfAll({ width, height, powers }: HalfSpectrum): number {
  const once = sumOf(powers.subarray(0, height)) + sumOf(powers.subarray(powers.length - height));
  return (2 * sumOf(powers) - once) / (width * height);
}

function sumOf(powers: Float64Array): number {
  let sum = 0;
  for (const power of powers) sum += power;
  return sum;
}

/** The mean of `AROUND` powers each way, as many as there are: first of each column alone, then of as many columns. */
function averageAround({ width, height, powers }: HalfSpectrum): Float64Array {
  const columns = width / 2 + 1;
  const means = new Float64Array(powers.length);
  for (let u = 0; u < columns; u += 1)
    averageLine(powers.subarray(u * height, (u + 1) * height), means.subarray(u * height));
  const reach = Math.min(AROUND, Math.floor((width - 1) / 2));
  const sums = new Float64Array(height);
  const ground = new Float64Array(powers.length);
  const add = (column: number, sign: number) => addColumn(means, { width, height }, column, sign, sums);
  for (let u = -reach; u <= reach; u += 1) add(u, 1);
  for (let u = 0; u < columns; u += 1) {
    for (let v = 0; v < height; v += 1) ground[u * height + v] = sums[v]! / (2 * reach + 1);
    add(u + reach + 1, 1);
    add(u - reach, -1);
  }
  return ground;
}

/** Adds a column, or takes it away; one that is not kept is the mirror image of one that is. */
function addColumn(
  means: Float64Array,
  { width, height }: Pick<HalfSpectrum, 'width' | 'height'>,
  column: number,
  sign: number,
  sums: Float64Array,
): void {
  const u = column & (width - 1);
  if (2 * u <= width) {
    for (let v = 0, at = u * height; v < height; v += 1, at += 1) sums[v]! += sign * means[at]!;
    return;
  }
  const from = (width - u) * height;
  for (let v = 0; v < height; v += 1) sums[v]! += sign * means[from + ((height - v) & (height - 1))]!;
}

function averageLine(line: Float64Array, means: Float64Array): void {
  const last = line.length - 1;
  const reach = Math.min(AROUND, Math.floor(last / 2));
  let sum = 0;
  for (let i = -reach; i <= reach; i += 1) sum += line[i & last]!;
  for (let i = 0; i <= last; i += 1) {
    means[i] = sum / (2 * reach + 1);
    sum += line[(i + reach + 1) & last]! - line[(i - reach) & last]!;
  }
}
