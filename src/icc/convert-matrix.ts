import { applyMatrix, type Matrix3, multiplyMatrices, scalingMatrix } from '../colour/matrix3.ts';
import { type CodeLookup, makeCodeLookup, tabulateLight } from './code-lookup.ts';
import type { Curve } from './curve.ts';
import { once } from './once.ts';
import type { PixelTransform } from './pixel-transform.ts';

type ThreeCurves = readonly [Curve, Curve, Curve];

/** Whites that differ by less are one white stated twice, rounded; further apart, it is a difference of colour. */
const SAME_WHITE = 0.01;

interface Tables {
  readonly light: readonly [Float64Array, Float64Array, Float64Array];
  readonly codes: readonly [CodeLookup, CodeLookup, CodeLookup];
}

/**
 * Pixels from one matrix profile to another: curves, one matrix, curves back, rounded as exact arithmetic rounds.
 * `matrix` leads from linear light to linear light. Full white stays full white.
 */
export function compileMatrixTransform(
  source: ThreeCurves,
  matrix: Matrix3,
  target: ThreeCurves,
): PixelTransform {
  const kept = keepWhite(matrix);
  const tables8 = once(() => makeTables(source, target, 255));
  const tables16 = once(() => makeTables(source, target, 65535));
  return {
    inputChannels: 3,
    outputChannels: 3,
    convert8: (from, to, pixels, fromStride = 3, toStride = 3) =>
      convert(from, to, pixels, fromStride, toStride, kept, tables8()),
    convert16: (from, to, pixels, fromStride = 3, toStride = 3) =>
      convert(from, to, pixels, fromStride, toStride, kept, tables16()),
  };
}

/** Fixed-point colorants sum up to white only to about 1e-4, which 16-bit samples would show. */
function keepWhite(matrix: Matrix3): Matrix3 {
  const white = applyMatrix(matrix, [1, 1, 1]);
  if (white.some((light) => Math.abs(light - 1) > SAME_WHITE)) return matrix;
  return multiplyMatrices(scalingMatrix([1 / white[0], 1 / white[1], 1 / white[2]]), matrix);
}

function makeTables(source: ThreeCurves, target: ThreeCurves, fullScale: 255 | 65535): Tables {
  const light = source.map((curve) => tabulateLight(curve, fullScale));
  const [red, green, blue] = target;
  const redCodes = makeCodeLookup(red, fullScale);
  const greenCodes = green === red ? redCodes : makeCodeLookup(green, fullScale);
  const blueCodes = blue === red ? redCodes : makeCodeLookup(blue, fullScale);
  return { light: [light[0]!, light[1]!, light[2]!], codes: [redCodes, greenCodes, blueCodes] };
}

function convert(
  from: Uint8Array | Uint16Array,
  to: Uint8Array | Uint16Array,
  pixels: number,
  fromStride: number,
  toStride: number,
  [[rr, rg, rb], [gr, gg, gb], [br, bg, bb]]: Matrix3,
  { light: [redLight, greenLight, blueLight], codes: [redCodes, greenCodes, blueCodes] }: Tables,
): void {
  let s = 0;
  let t = 0;
  for (let i = 0; i < pixels; i++) {
    const red = redLight[from[s]!]!;
    const green = greenLight[from[s + 1]!]!;
    const blue = blueLight[from[s + 2]!]!;
    to[t] = findCode(redCodes, rr * red + rg * green + rb * blue);
    to[t + 1] = findCode(greenCodes, gr * red + gg * green + gb * blue);
    to[t + 2] = findCode(blueCodes, br * red + bg * green + bb * blue);
    s += fromStride;
    t += toStride;
  }
}

/** Light beyond 0…1 is clipped: the target space cannot hold it. Sums that should be 1 come out a hair below. */
function findCode({ bins, first, from }: CodeLookup, light: number): number {
  if (!(light > 0)) return first[0]!;
  let code = first[light < 1 ? (light * bins) | 0 : bins]!;
  while (from[code + 1]! <= light) code++;
  return code;
}
