/** How strong each period of a row of numbers is, against what lies around it in frequency. */
export interface Periodogram {
  /** Strength over the median of its neighbourhood; index i stands for i / size cycles a sample. */
  readonly strength: Float64Array;
  readonly size: number;
}

/** Neighbourhood of a frequency whose median is its ground: wide beside a line of the Hann window, narrow beside a roll-off. */
const GROUND = 64;

/**
 * Periodogram of the numbers less their mean under a Hann window, padded with zeros to at least twice their length, so
 * that no frequency falls between two of its places. Fewer than 2 numbers, and equal ones, give strengths of 0.
 * @see J. W. Cooley and J. W. Tukey, Math. Comp. 19 (1965); F. J. Harris, Proc. IEEE 66 (1978), for the window.
 */
export function makePeriodogram(values: Float64Array): Periodogram {
  let size = 4;
  while (size < 2 * values.length) size *= 2;
  const mean = values.reduce((sum, value) => sum + value, 0) / Math.max(1, values.length);
  const real = new Float64Array(size);
  const imaginary = new Float64Array(size);
  for (let i = 0; i < values.length; i += 1)
    real[i] = (values[i]! - mean) * (0.5 - 0.5 * Math.cos((2 * Math.PI * (i + 0.5)) / values.length));
  transform(real, imaginary);
  const magnitudes = Float64Array.from({ length: size / 2 + 1 }, (_, i) =>
    Math.hypot(real[i]!, imaginary[i]!),
  );
  return { strength: overGround(magnitudes), size };
}

/** Strength of a frequency in cycles a sample, between two places in a straight line; 0 beyond half a cycle. */
export function strengthAt({ strength, size }: Periodogram, frequency: number): number {
  const place = frequency * size;
  const i = Math.floor(place);
  if (i + 1 >= strength.length) return 0;
  return strength[i]! + (strength[i + 1]! - strength[i]!) * (place - i);
}

function overGround(magnitudes: Float64Array): Float64Array {
  const over = new Float64Array(magnitudes.length);
  for (let from = 0; from < magnitudes.length; from += GROUND) {
    const around = magnitudes.slice(Math.max(0, from - GROUND / 2), from + 1.5 * GROUND).sort();
    const ground = around[Math.floor(around.length / 2)]!;
    if (ground === 0) continue;
    for (let i = from; i < Math.min(magnitudes.length, from + GROUND); i += 1)
      over[i] = magnitudes[i]! / ground;
  }
  return over;
}

/** Discrete Fourier transform in place; the length is a power of 2. */
function transform(real: Float64Array, imaginary: Float64Array): void {
  const size = real.length;
  for (let i = 1, j = 0; i < size; i += 1) {
    let bit = size >> 1;
    for (; (j & bit) !== 0; bit >>= 1) j ^= bit;
    j ^= bit;
    // The imaginary parts are all 0 still.
    if (i < j) [real[i], real[j]] = [real[j]!, real[i]!];
  }
  for (let half = 1; half < size; half *= 2)
    for (let k = 0; k < half; k += 1) {
      const [cos, sin] = [Math.cos((Math.PI * k) / half), -Math.sin((Math.PI * k) / half)];
      for (let at = k; at < size; at += 2 * half) butterfly(real, imaginary, at, at + half, cos, sin);
    }
}

function butterfly(
  real: Float64Array,
  imaginary: Float64Array,
  at: number,
  partner: number,
  cos: number,
  sin: number,
): void {
  const re = real[partner]! * cos - imaginary[partner]! * sin;
  const im = real[partner]! * sin + imaginary[partner]! * cos;
  real[partner] = real[at]! - re;
  imaginary[partner] = imaginary[at]! - im;
  real[at]! += re;
  imaginary[at]! += im;
}
