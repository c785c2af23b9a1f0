import { transform } from './fourier.ts';

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
 * @see F. J. Harris, Proc. IEEE 66 (1978), for the window.
 */
export function makePeriodogram(values: Float64Array): Periodogram {
  let size = 4;
  while (size < 2 * values.length) size *= 2;
  let sum = 0;
  for (const value of values) sum += value;
  const mean = sum / Math.max(1, values.length);
  const real = new Float64Array(size);
  const imaginary = new Float64Array(size);
  for (let i = 0; i < values.length; i += 1)
    real[i] = (values[i]! - mean) * (0.5 - 0.5 * Math.cos((2 * Math.PI * (i + 0.5)) / values.length));
  transform(real, imaginary);
  const magnitudes = new Float64Array(size / 2 + 1);
  for (let i = 0; i < magnitudes.length; i += 1) magnitudes[i] = Math.hypot(real[i]!, imaginary[i]!);
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
