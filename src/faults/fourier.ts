/** What a transform of one length needs: made once, used for every line of that length. */
export interface Circle {
  /** exp(-2 pi i k / size) for the first half of the k. */
  readonly cosines: Float64Array;
  readonly sines: Float64Array;
  /** Where each place goes when its bits are read backwards. */
  readonly reversed: Uint32Array;
}

/** @param size a power of 2 */
export function makeCircle(size: number): Circle {
  const half = size / 2;
  const cosines = new Float64Array(half);
  const sines = new Float64Array(half);
  for (let k = 0; k < half; k += 1) {
    const angle = (2 * Math.PI * k) / size;
    cosines[k] = Math.cos(angle);
    sines[k] = -Math.sin(angle);
  }
  const reversed = new Uint32Array(size);
  for (let i = 1; i < size; i += 1) reversed[i] = (reversed[i >> 1]! >> 1) | (i & 1 ? half : 0);
  return { cosines, sines, reversed };
}

/**
 * Discrete Fourier transform in place, without a factor; the length is that of the circle.
 * @see J. W. Cooley and J. W. Tukey, Math. Comp. 19 (1965).
 */
export function transform(
  real: Float64Array,
  imaginary: Float64Array,
  { cosines, sines, reversed }: Circle = makeCircle(real.length),
): void {
  const size = real.length;
  for (let i = 1; i < size; i += 1) {
    const j = reversed[i]!;
    if (i >= j) continue;
    const re = real[i]!;
    const im = imaginary[i]!;
    real[i] = real[j]!;
    imaginary[i] = imaginary[j]!;
    real[j] = re;
    imaginary[j] = im;
  }
  for (let half = 1; half < size; half *= 2) {
    const stride = size / (2 * half);
    for (let from = 0; from < size; from += 2 * half)
      for (let k = 0, turn = 0; k < half; k += 1, turn += stride) {
        const at = from + k;
        const partner = at + half;
        // One by one: in lists, numbers would be made and thrown away for each turn of this loop.
        const cos = cosines[turn]!;
        const sin = sines[turn]!;
        const x = real[partner]!;
        const y = imaginary[partner]!;
        const re = x * cos - y * sin;
        const im = x * sin + y * cos;
        real[partner] = real[at]! - re;
        imaginary[partner] = imaginary[at]! - im;
        real[at]! += re;
        imaginary[at]! += im;
      }
  }
}
