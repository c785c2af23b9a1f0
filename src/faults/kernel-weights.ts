type Kernel = { readonly reach: number; readonly at: (x: number) => number };

/** Mitchell and Netravali, "Reconstruction filters in computer graphics", SIGGRAPH 1988. */
const cubic = (b: number, c: number): Kernel => ({
  reach: 2,
  at: (x) =>
    x < 1
      ? ((12 - 9 * b - 6 * c) * x ** 3 + (-18 + 12 * b + 6 * c) * x ** 2 + 6 - 2 * b) / 6
      : ((-b - 6 * c) * x ** 3 + (6 * b + 30 * c) * x ** 2 + (-12 * b - 48 * c) * x + 8 * b + 24 * c) / 6,
});
const sinc = (x: number) => (x === 0 ? 1 : Math.sin(Math.PI * x) / (Math.PI * x));
/** Those in use: triangle, Catmull-Rom, Mitchell, Lanczos of 3. */
export const KERNELS: readonly Kernel[] = [
  { reach: 1, at: (x) => 1 - x },
  cubic(0, 0.5),
  cubic(1 / 3, 1 / 3),
  { reach: 3, at: (x) => sinc(x) * sinc(x / 3) },
];

/** Weights of a pixel's samples under a kernel, their sum 1, at every 256th of the way from one sample to the next. */
export const STEPS = 256;
export interface Weights {
  readonly band: number;
  readonly table: Float64Array;
}
export const WEIGHTS: readonly Weights[] = KERNELS.map(({ reach, at }) => {
  const band = 2 * reach;
  const table = new Float64Array((STEPS + 1) * band);
  for (let step = 0; step <= STEPS; step += 1) {
    const row = table.subarray(step * band, (step + 1) * band);
    for (let k = 0; k < band; k += 1) {
      const distance = Math.abs(step / STEPS + reach - 1 - k);
      row[k] = distance < reach ? at(distance) : 0;
    }
    const sum = row.reduce((total, weight) => total + weight, 0);
    for (let k = 0; k < band; k += 1) row[k]! /= sum;
  }
  return { band, table };
});
