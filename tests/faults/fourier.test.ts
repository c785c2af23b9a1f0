import { describe, expect, it } from 'vitest';
import { transformPlane } from '../../src/faults/fourier.ts';
import { seededNumbers } from '../pictures.ts';

const SIZES = [
  [8, 4],
  [4, 16],
  [2, 2],
] as const;

describe('the transform of a plane', () => {
  it.each(SIZES)('of %d x %d agrees with the sums that define it', (width, height) => {
    const next = seededNumbers(11);
    const values = Float64Array.from({ length: width * height }, next);
    const plane = { width, height, real: values.slice(), imaginary: new Float64Array(values.length) };
    transformPlane(plane);
    for (let v = 0; v < height; v += 1)
      for (let u = 0; u < width; u += 1) {
        let [re, im] = [0, 0];
        values.forEach((value, i) => {
          const angle = -2 * Math.PI * ((u * (i % width)) / width + (v * Math.floor(i / width)) / height);
          re += value * Math.cos(angle);
          im += value * Math.sin(angle);
        });
        expect(plane.real[v * width + u]).toBeCloseTo(re, 9);
        expect(plane.imaginary[v * width + u]).toBeCloseTo(im, 9);
      }
  });

  it('keeps the energy (M.-A. Parseval)', () => {
    const next = seededNumbers(5);
    const values = Float64Array.from({ length: 64 * 32 }, () => next() - 0.5);
    const plane = { width: 64, height: 32, real: values.slice(), imaginary: new Float64Array(values.length) };
    transformPlane(plane);
    const before = values.reduce((sum, value) => sum + value * value, 0);
    const after = plane.real.reduce((sum, re, i) => sum + re * re + plane.imaginary[i]! ** 2, 0);
    expect(after / values.length / before).toBeCloseTo(1, 9);
  });
});
