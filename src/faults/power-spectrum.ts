import { type Circle, makeCircle, transform } from './fourier.ts';

/**
 * Powers of the waves of a picture, column by column: of the wave that goes `u` times across and `v` times down it at
 * `u * height + v`. Only the columns 0 … width / 2 are kept: the wave (-u, -v) has the power of (u, v).
 */
export interface HalfSpectrum {
  /** Sides of the picture, powers of 2. */
  readonly width: number;
  readonly height: number;
  readonly powers: Float64Array;
}

interface Size {
  readonly width: number;
  readonly height: number;
}

/** The power spectrum of a picture, which is filled up with 0 to the right and below to `whole`, whose sides are powers of 2. */
export function measurePowers(values: Float64Array, size: Size, whole: Size): HalfSpectrum {
  const { width, height } = whole;
  const columns = width / 2 + 1;
  const real = new Float64Array(columns * height);
  const imaginary = new Float64Array(columns * height);
  const across = makeCircle(width);
  const [first, second] = [new Float64Array(width), new Float64Array(width)];
  for (let y = 0; y < size.height; y += 2) {
    first.fill(0).set(values.subarray(y * size.width, (y + 1) * size.width));
    second.fill(0).set(values.subarray((y + 1) * size.width, (y + 2) * size.width));
    transformTwo(first, second, across, columns, { real, imaginary, from: y, step: height, apart: 1 });
  }
  const down = makeCircle(height);
  for (let from = 0; from < real.length; from += height)
    transform(real.subarray(from, from + height), imaginary.subarray(from, from + height), down);
  for (let i = 0; i < real.length; i += 1) real[i] = real[i]! ** 2 + imaginary[i]! ** 2;
  return { width, height, powers: real };
}

/**
 * The transform of powers, which is an autocorrelation and real: its first `rows` rows from the top, `width` numbers
 * each, without a factor. A shift to the left is found at the other end of its row, and (-right, -down) is as
 * (right, down).
 * @see N. Wiener, Acta Math. 55 (1930), and A. Khinchin, Math. Ann. 109 (1934).
 */
export function correlate({ width, height, powers }: HalfSpectrum, rows: number): Float64Array {
  const columns = width / 2 + 1;
  // One more, for the partner of the last where their number is odd.
  const real = new Float64Array((columns + 1) * height);
  const imaginary = new Float64Array((columns + 1) * height);
  const down = makeCircle(height);
  const [first, second] = [new Float64Array(height), new Float64Array(height)];
  for (let u = 0; u < columns; u += 2) {
    first.set(powers.subarray(u * height, (u + 1) * height));
    second.fill(0).set(powers.subarray((u + 1) * height, (u + 2) * height));
    transformTwo(first, second, down, height, {
      real,
      imaginary,
      from: u * height,
      step: 1,
      apart: height,
    });
  }
  const across = makeCircle(width);
  const result = new Float64Array(rows * width);
  const [upper, lower] = [new Float64Array(width), new Float64Array(width)];
  for (let y = 0; y < rows; y += 2) {
    // Each row is its own mirror image with the other sign of its imaginary part, so that two make one that is any.
    for (let u = 0, at = y; u < columns; u += 1, at += height) {
      const re = real[at]!;
      const im = imaginary[at]!;
      const re2 = real[at + 1]!;
      const im2 = imaginary[at + 1]!;
      upper[u] = re - im2;
      lower[u] = im + re2;
      if (u === 0 || 2 * u === width) continue;
      upper[width - u] = re + im2;
      lower[width - u] = re2 - im;
    }
    transform(upper, lower, across);
    result.set(upper, y * width);
    if (y + 1 < rows) result.set(lower, (y + 1) * width);
  }
  return result;
}

/** Where two lines of numbers go: the i-th to `from + i * step`, that of the second line `apart` behind it. */
interface TwoLines {
  readonly real: Float64Array;
  readonly imaginary: Float64Array;
  readonly from: number;
  readonly step: number;
  readonly apart: number;
}

/**
 * The first `count` numbers of the transforms of two lines of real numbers at once, as the real and the imaginary part of
 * one, which they are told apart in since each is its own mirror image. The lines are written over.
 */
function transformTwo(
  first: Float64Array,
  second: Float64Array,
  circle: Circle,
  count: number,
  { real, imaginary, from, step, apart }: TwoLines,
): void {
  transform(first, second, circle);
  const last = first.length - 1;
  for (let i = 0, to = from; i < count; i += 1, to += step) {
    const back = (first.length - i) & last;
    const re = first[i]!;
    const im = second[i]!;
    const reBack = first[back]!;
    const imBack = second[back]!;
    real[to] = (re + reBack) / 2;
    imaginary[to] = (im - imBack) / 2;
    real[to + apart] = (im + imBack) / 2;
    imaginary[to + apart] = (reBack - re) / 2;
  }
}
