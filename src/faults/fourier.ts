/** A picture of complex numbers, rows from the top; both sides are powers of 2. */
export interface ComplexPlane {
  readonly width: number;
  readonly height: number;
  readonly real: Float64Array;
  readonly imaginary: Float64Array;
}

/**
 * Discrete Fourier transform in place, without a factor; the length is a power of 2.
 * @see J. W. Cooley and J. W. Tukey, Math. Comp. 19 (1965).
 */
export function transform(real: Float64Array, imaginary: Float64Array): void {
  transformWith(real, imaginary, makeCircle(real.length));
}

/** The transform of every row, then of every column, in place. */
export function transformPlane({ width, height, real, imaginary }: ComplexPlane): void {
  const across = makeCircle(width);
  for (let from = 0; from < real.length; from += width)
    transformWith(real.subarray(from, from + width), imaginary.subarray(from, from + width), across);
  const down = makeCircle(height);
  const [columnReal, columnImaginary] = [new Float64Array(height), new Float64Array(height)];
  for (let x = 0; x < width; x += 1) {
    for (let y = 0, at = x; y < height; y += 1, at += width) {
      columnReal[y] = real[at]!;
      columnImaginary[y] = imaginary[at]!;
    }
    transformWith(columnReal, columnImaginary, down);
    for (let y = 0, at = x; y < height; y += 1, at += width) {
      real[at] = columnReal[y]!;
      imaginary[at] = columnImaginary[y]!;
    }
  }
}

/** exp(-2 pi i k / size) for the first half of the k, cosines before sines. */
function makeCircle(size: number): Float64Array {
  const half = size / 2;
  return Float64Array.from({ length: size }, (_, k) =>
    k < half ? Math.cos((2 * Math.PI * k) / size) : -Math.sin((2 * Math.PI * (k - half)) / size),
  );
}

function transformWith(real: Float64Array, imaginary: Float64Array, circle: Float64Array): void {
  const size = real.length;
  for (let i = 1, j = 0; i < size; i += 1) {
    let bit = size >> 1;
    for (; (j & bit) !== 0; bit >>= 1) j ^= bit;
    j ^= bit;
    if (i >= j) continue;
    [real[i], real[j]] = [real[j]!, real[i]!];
    [imaginary[i], imaginary[j]] = [imaginary[j]!, imaginary[i]!];
  }
  for (let half = 1; half < size; half *= 2) {
    const stride = size / (2 * half);
    for (let k = 0; k < half; k += 1) {
      const cos = circle[k * stride]!;
      const sin = circle[size / 2 + k * stride]!;
      for (let at = k; at < size; at += 2 * half) {
        const partner = at + half;
        const re = real[partner]! * cos - imaginary[partner]! * sin;
        const im = real[partner]! * sin + imaginary[partner]! * cos;
        real[partner] = real[at]! - re;
        imaginary[partner] = imaginary[at]! - im;
        real[at]! += re;
        imaginary[at]! += im;
      }
    }
  }
}
