import { boxOf, discOf, holed, speckBeside } from '../cut-out-art.ts';
import { glowOf, paintHazy, veilOf } from '../hazy-art.ts';
import { paintRaster } from '../pictures.ts';
import type { FaultCase } from './fault-case.ts';

type Made = Omit<FaultCase, 'code' | 'widthMm'>;

/** Every pair of two lists. */
function pairs<A, B>(as: readonly A[], bs: readonly B[]): readonly (readonly [A, B])[] {
  return as.flatMap((a) => bs.map((b) => [a, b] as const));
}

const cases = (code: string, widthMm: number, ...made: readonly Made[]): readonly FaultCase[] =>
  made.map((one) => ({ code, widthMm, ...one }));

/** Black veils by alpha, side and grain across the limits of 1 L* (alpha 2.9), 12 and 25 mm2; and what fades. */
export const ALPHA_HAZE_CASES: readonly FaultCase[] = cases(
  'veil',
  60,
  ...pairs([1, 2, 3, 5, 8, 11, 12, 13, 16, 22], [4, 4.8, 5, 6, 12, 25]).flatMap(([alpha, side]) =>
    [0, 2].map((grain) => ({
      name: `alpha ${alpha}, ${side} mm square, grain ${grain}`,
      fault: alpha >= 3 && alpha <= 12 && side >= 5,
      raster: () => veilOf(alpha, side, grain),
    })),
  ),
  ...pairs([10, 16, 25, 80, 200], [2, 5, 10, 20, 28]).flatMap(([most, reach]) =>
    (['linear', 'bell'] as const).map((shape) => ({
      name: `${shape} glow from ${most} over ${reach} mm`,
      fault: false,
      raster: () => glowOf(most, reach, shape),
    })),
  ),
  ...pairs([4, 6, 8, 12], [2, 3, 5]).map(([alpha, fade]) => ({
    name: `even shadow of ${alpha}, fading over ${fade} mm`,
    fault: false,
    raster: () => paintHazy((far) => (far < 10 ? alpha : alpha * (1 - (far - 10) / fade))),
  })),
  ...pairs([3, 6, 12], [3, 6]).map(([alpha, reach]) => ({
    name: `all over at ${alpha}, with a glow of ${reach} mm`,
    fault: true,
    raster: () => paintHazy((far) => Math.max(alpha, 180 * (1 - far / reach))),
  })),
);

/** Black at 251 prints 1.1 L* lighter, at 252 0.8 (CIE 15:2018). */
export const HOLLOW_ALPHA_CASES: readonly FaultCase[] = [
  ...cases(
    'almost-opaque',
    50,
    ...[200, 235, 242, 243, 244, 246, 248, 250, 251, 252, 253, 254, 255].map((alpha) => ({
      name: `black at ${alpha}`,
      fault: alpha >= 243 && alpha <= 251,
      raster: () => discOf([0, 0, 0], alpha),
    })),
    ...[20, 24, 25, 26, 40, 80].map((side) => ({
      name: `part of ${side / 5} mm square at 247`,
      fault: side >= 25,
      raster: () => paintRaster(250, 250, (x, y) => [0, 0, 0, x < side && y < side ? 247 : 255] as const),
    })),
    ...[100, 200, 300].map((length) => ({
      name: `fading over ${length / 5} mm`,
      fault: false,
      raster: () =>
        paintRaster(250, 300, (_, y) => [0, 0, 0, Math.round(255 * Math.max(0, 1 - y / length))] as const),
    })),
  ),
  ...cases(
    'ragged-holes',
    60,
    ...pairs([1.6, 2, 3, 5, 8, 15], [0.6, 0.8, 1, 1.5]).flatMap(([hole, rim]) =>
      (['ragged', 'soft', 'clean'] as const).map((how) => ({
        name: `${hole} mm, ${how} rim of ${rim} mm`,
        fault: how === 'ragged',
        raster: () => holed(hole, how, rim, 10 * hole + 100 * rim),
      })),
    ),
  ),
];

/** Specks of 0.1 to 3 mm, at 0.5 to 8 mm: up to 1.5 mm, from 2 mm on. */
export const STRAY_PIXELS_CASES: readonly FaultCase[] = pairs(
  [1, 3, 8, 14, 15, 16, 20, 30],
  [5, 15, 19, 20, 21, 40, 80],
).map(([size, away]) => ({
  name: `${size / 10} mm long, ${away / 10} mm away`,
  code: 'enlarges-box',
  fault: size <= 15 && away >= 20,
  raster: () => speckBeside(size, away, size === 8 ? 40 : 255),
  widthMm: 40 + (away + size) / 10,
}));

/** Gray 252 is 1.0 L* from white, 253 0.7 (CIE 15:2018). */
export const NEAR_WHITE_BOX_CASES: readonly FaultCase[] = pairs(
  [255, 254, 253, 252, 251, 250, 247, 243, 240],
  [0, 1, 2, 3],
).map(([gray, grain]) => ({
  name: `gray ${gray}, grain ${grain}`,
  code: 'near-white',
  fault: gray <= 252,
  raster: () => boxOf(gray, grain),
  widthMm: 60,
}));
