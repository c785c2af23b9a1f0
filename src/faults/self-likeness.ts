import type { LightnessCells } from '../raster/lightness-cells.ts';
import { type ComplexPlane, transformPlane } from './fourier.ts';

/** How like itself a picture is after a shift, whatever its colours and its large shapes. */
export interface SelfLikeness {
  /** Largest shifts that are told, cells: farther ones leave too little to compare. */
  readonly mostRight: number;
  readonly mostDown: number;
  /** Of a shift by whole cells right (also left, below 0) and down; no unit: see `spread`. */
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
 * Autocorrelation of the contrast of a picture whose spectrum was made even before: broad shapes give nothing, what
 * comes back in the same form gives a peak at its distance.
 * @see N. Wiener, Acta Math. 55 (1930), and A. Khinchin, Math. Ann. 109 (1934), for the way over the spectrum.
 */
export function measureSelfLikeness({ width, height }: LightnessCells, contrast: Float64Array): SelfLikeness {
  const plane = makePlane(width, height, contrast);
  transformPlane(plane);
  evenOut(plane);
  // The spectrum is real and even, so that the transform and its inverse are the same but for a factor.
  transformPlane(plane);
  const { real } = plane;
  const at = (right: number, down: number) =>
    real[((down + plane.height) % plane.height) * plane.width + ((right + plane.width) % plane.width)]!;
  const [mostRight, mostDown] = [Math.floor(width * FARTHEST), Math.floor(height * FARTHEST)];
  let squares = 0;
  for (let down = 0; down <= mostDown; down += 1)
    for (let right = -mostRight; right <= mostRight; right += 1)
      if (right !== 0 || down !== 0) squares += at(right, down) ** 2;
  const spread = Math.sqrt(squares / ((mostDown + 1) * (2 * mostRight + 1) - 1));
  return { mostRight, mostDown, at, spread };
}

function makePlane(width: number, height: number, values: Float64Array): ComplexPlane {
  const [across, down] = [powerAbove(width), powerAbove(height)];
  const real = new Float64Array(across * down);
  for (let y = 0; y < height; y += 1) real.set(values.subarray(y * width, (y + 1) * width), y * across);
  return { width: across, height: down, real, imaginary: new Float64Array(across * down) };
}

function powerAbove(size: number): number {
  return 2 ** Math.ceil(Math.log2(Math.max(2, size)));
}

/** Each power over the mean of those around it; the spectrum closes on itself. */
function evenOut({ width, height, real, imaginary }: ComplexPlane): void {
  for (let i = 0; i < real.length; i += 1) real[i] = real[i]! ** 2 + imaginary[i]! ** 2;
  imaginary.fill(0);
  const rows = new Float64Array(real.length);
  for (let y = 0; y < height; y += 1) meanAround(real, rows, y * width, 1, width);
  const ground = new Float64Array(real.length);
  for (let x = 0; x < width; x += 1) meanAround(rows, ground, x, width, height);
  const least = 1e-3 * (real.reduce((sum, power) => sum + power, 0) / real.length);
  if (least === 0) return;
  for (let i = 0; i < real.length; i += 1) real[i] = Math.min(MOST, real[i]! / (ground[i]! + least));
}

function meanAround(from: Float64Array, to: Float64Array, start: number, step: number, count: number): void {
  const place = (i: number) => start + ((i + count) % count) * step;
  const reach = Math.min(AROUND, Math.floor((count - 1) / 2));
  let sum = 0;
  for (let i = -reach; i <= reach; i += 1) sum += from[place(i)]!;
  for (let i = 0; i < count; i += 1) {
    to[place(i)] = sum / (2 * reach + 1);
    sum += from[place(i + reach + 1)]! - from[place(i - reach)]!;
  }
}
