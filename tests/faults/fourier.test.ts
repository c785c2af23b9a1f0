import { describe, expect, it } from 'vitest';
import { transform } from '../../src/faults/fourier.ts';
import { correlate, measurePowers } from '../../src/faults/power-spectrum.ts';
import { seededNumbers } from '../pictures.ts';

const SIZES = [
  [8, 4],
  [4, 16],
  [2, 2],
  [2, 8],
  [16, 2],
] as const;

/** What defines the transform of a plane, at a wave. */
function sumOf(values: Float64Array, width: number, height: number, u: number, v: number): [number, number] {
  let [re, im] = [0, 0];
  values.forEach((value, i) => {
    const angle = -2 * Math.PI * ((u * (i % width)) / width + (v * Math.floor(i / width)) / height);
    re += value * Math.cos(angle);
    im += value * Math.sin(angle);
  });
  return [re, im];
}

it.each([2, 4, 32])('the transform of %d numbers agrees with the sums that define it', (size) => {
  const next = seededNumbers(7);
  const [re, im] = [Float64Array.from({ length: size }, next), Float64Array.from({ length: size }, next)];
  const [real, imaginary] = [re.slice(), im.slice()];
  transform(real, imaginary);
  for (let k = 0; k < size; k += 1) {
    const [ofReal, ofImaginary] = [sumOf(re, size, 1, k, 0), sumOf(im, size, 1, k, 0)];
    expect(real[k]).toBeCloseTo(ofReal[0] - ofImaginary[1], 9);
    expect(imaginary[k]).toBeCloseTo(ofReal[1] + ofImaginary[0], 9);
  }
});

describe('the powers of a plane', () => {
  it.each(SIZES)('of %d x %d agree with the sums that define them', (width, height) => {
    const next = seededNumbers(11);
    const values = Float64Array.from({ length: width * height }, next);
    const { powers } = measurePowers(values, { width, height }, { width, height });
    expect(powers).toHaveLength((width / 2 + 1) * height);
    for (let v = 0; v < height; v += 1)
      for (let u = 0; 2 * u <= width; u += 1) {
        const [re, im] = sumOf(values, width, height, u, v);
        expect(powers[u * height + v]).toBeCloseTo(re ** 2 + im ** 2, 9);
        const [back, backIm] = sumOf(values, width, height, width - u, height - v);
        expect(back ** 2 + backIm ** 2).toBeCloseTo(re ** 2 + im ** 2, 9);
      }
  });

  it('keep the energy (M.-A. Parseval), also of a picture that is filled up', () => {
    const next = seededNumbers(5);
    const values = Float64Array.from({ length: 59 * 27 }, () => next() - 0.5);
    const { powers } = measurePowers(values, { width: 59, height: 27 }, { width: 64, height: 32 });
    const before = values.reduce((sum, value) => sum + value * value, 0);
    const after = powers.reduce((sum, power, i) => sum + (i < 32 || i >= 32 * 32 ? 1 : 2) * power, 0);
    expect(after / (64 * 32) / before).toBeCloseTo(1, 9);
  });
});

it.each(SIZES)('the correlation of a picture of %d x %d is that of its definition', (width, height) => {
  const next = seededNumbers(13);
  const values = Float64Array.from({ length: width * height }, () => next() - 0.5);
  const rows = Math.max(1, height - 1);
  const found = correlate(measurePowers(values, { width, height }, { width, height }), rows);
  expect(found).toHaveLength(rows * width);
  for (let down = 0; down < rows; down += 1)
    for (let right = 0; right < width; right += 1) {
      let sum = 0;
      for (let y = 0; y < height; y += 1)
        for (let x = 0; x < width; x += 1)
          sum += values[y * width + x]! * values[((y + down) % height) * width + ((x + right) % width)]!;
      expect(found[down * width + right]! / (width * height)).toBeCloseTo(sum, 9);
    }
});
