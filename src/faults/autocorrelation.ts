import { type ComplexField, transformField } from './fourier.ts';
import type { GrayField } from './reduced-lightness.ts';

/**
 * How alike a field is to itself moved by x, y: 1 at 0, 0; the mean product of the values that overlap, by the mean
 * square (Wiener and Khinchin; padded, so that nothing wraps round). 0 for a field of zeros.
 */
export function correlateWithItself({ width, height, values }: GrayField): (x: number, y: number) => number {
  const field = makeField(2 ** Math.ceil(Math.log2(2 * width)), 2 ** Math.ceil(Math.log2(2 * height)));
  for (let y = 0; y < height; y++) field.re.set(values.subarray(y * width, (y + 1) * width), y * field.width);
  transformField(field);
  for (let i = 0; i < field.re.length; i++) {
    field.re[i] = field.re[i]! ** 2 + field.im[i]! ** 2;
    field.im[i] = 0;
  }
  transformField(field);
  const energy = field.re[0]! / (width * height);
  return (x, y) => {
    const overlap = (width - Math.abs(x)) * (height - Math.abs(y));
    if (energy <= 0 || overlap <= 0) return 0;
    const column = (x + field.width) % field.width;
    const row = (y + field.height) % field.height;
    return field.re[row * field.width + column]! / overlap / energy;
  };
}

function makeField(width: number, height: number): ComplexField {
  return { width, height, re: new Float64Array(width * height), im: new Float64Array(width * height) };
}
