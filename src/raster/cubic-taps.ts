/** For every output pixel of an axis, the source pixels it is made of and their weights, `count` of each. */
export interface CubicTaps {
  readonly count: number;
  /** All within the source: beyond its ends the border pixel is repeated. */
  readonly from: Int32Array;
  /** Their sum over an output pixel is 1. */
  readonly weights: Float64Array;
}

/**
 * The cubic convolution kernel with a = -1/2, as wide as the coarser of source and output: four source pixels where
 * it enlarges, more where it reduces. Pixel middles map to their true places: output middle x + 1/2 shows source
 * point (x + 1/2) * source / output.
 * @see R. Keys, "Cubic Convolution Interpolation for Digital Image Processing", IEEE Trans. ASSP 29 (1981), eq. 15
 */
export function findCubicTaps(sourcePx: number, outputPx: number): CubicTaps {
  const scale = Math.max(1, sourcePx / outputPx);
  const half = Math.ceil(2 * scale);
  const count = 2 * half;
  const from = new Int32Array(outputPx * count);
  const weights = new Float64Array(outputPx * count);
  for (let output = 0; output < outputPx; output++) {
    const place = ((output + 0.5) * sourcePx) / outputPx - 0.5;
    const first = Math.floor(place) - half + 1;
    let sum = 0;
    for (let tap = 0; tap < count; tap++) {
      from[output * count + tap] = Math.min(Math.max(first + tap, 0), sourcePx - 1);
      sum += weights[output * count + tap] = cubicWeight(Math.abs(place - first - tap) / scale);
    }
    for (let tap = output * count; tap < (output + 1) * count; tap++) weights[tap]! /= sum;
  }
  return { count, from, weights };
}

/** The kernel at a distance of 0 or more, in pixels. */
export function cubicWeight(distance: number): number {
  if (distance >= 2) return 0;
  return distance < 1
    ? 1.5 * distance ** 3 - 2.5 * distance ** 2 + 1
    : -0.5 * distance ** 3 + 2.5 * distance ** 2 - 4 * distance + 2;
}
