import type { PointPx, RectPx } from '../geometry/rectangle.ts';
import type { Raster } from '../raster/raster.ts';
import { correlateWithItself } from './autocorrelation.ts';
import { findLattice } from './lattice.ts';
import { type GrayField, reduceLightness, takeFineDetail } from './reduced-lightness.ts';

/** Something that is repeated in two directions all over art that is itself not repeated. */
export interface RepeatedOverlay {
  /** From one to the next, in pixels of the art, in each of the two directions. */
  readonly stepsPx: readonly [PointPx, PointPx];
  /** Share of the parts of the art that have it, 0…1. */
  readonly presence: number;
  /** Share of the art's own variance that the repetition does not explain, 0…1. */
  readonly own: number;
}

/** Longer side of the copy that is looked at: lettering of 2 % of the width has 5 px there (own choice). */
const SIDE_PX = 256;
/** Reach of what counts as fine, in pixels of that copy (own choice). */
const REACH_PX = 6;
/** Strokes stronger than so many codes count no more: an edge of the art must not outweigh a faint overlay (own choice). */
const CLIP = 16;
/** Shares from which on it is an overlay, from made pictures (own choice). */
const LEAST_PRESENCE = 0.8;
const LEAST_OWN = 0.35;
/** Of a part with what its neighbours by the lattice have (own choice). */
const LEAST_MATCH = 0.15;
const PARTS = 6;

/** The overlay in a box of the art; null where there is none, or where the art is too small to tell. Gray or rgb. */
export function findRepeatedOverlay(raster: Raster, box: RectPx): RepeatedOverlay | null {
  const reduced = reduceLightness(raster, box, SIDE_PX);
  const { factor, width, height } = reduced;
  if (Math.min(width, height) < 8 * REACH_PX) return null;
  const fine = takeFineDetail(reduced, REACH_PX);
  const clipped = { width, height, values: fine.values.map((v) => Math.max(-CLIP, Math.min(CLIP, v))) };
  const lattice = findLattice(correlateWithItself(clipped), width, height);
  if (lattice === null) return null;
  const presence = measurePresence(clipped, predict(clipped, lattice));
  if (presence < LEAST_PRESENCE) return null;
  const own = measureOwn(reduced, predict(reduced, lattice));
  if (own < LEAST_OWN) return null;
  const [first, second] = lattice;
  const scale = ({ x, y }: PointPx) => ({ x: x * factor, y: y * factor });
  return { stepsPx: [scale(first), scale(second)], presence, own };
}

/** Each value as its neighbours by the lattice have it, without itself: their median, so that art does not leak in. */
function predict({ width, height, values }: GrayField, [a, b]: readonly [PointPx, PointPx]): Float64Array {
  const steps: PointPx[] = [];
  for (let i = -2; i <= 2; i++)
    for (let j = -2; j <= 2; j++)
      if (i !== 0 || j !== 0) steps.push({ x: i * a.x + j * b.x, y: i * a.y + j * b.y });
  const predicted = new Float64Array(values.length);
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      const found: number[] = [];
      for (const step of steps) {
        const [column, row] = [x + step.x, y + step.y];
        if (column >= 0 && row >= 0 && column < width && row < height)
          found.push(values[row * width + column]!);
      }
      found.sort((one, other) => one - other);
      const middle = found.length >> 1;
      predicted[y * width + x] =
        found.length === 0
          ? 0
          : found.length % 2 === 1
            ? found[middle]!
            : (found[middle - 1]! + found[middle]!) / 2;
    }
  return predicted;
}

/** Share of the parts of the field that go with what is predicted. */
function measurePresence({ width, height, values }: GrayField, predicted: Float64Array): number {
  let present = 0;
  for (let part = 0; part < PARTS * PARTS; part++) {
    const column = part % PARTS;
    const row = Math.floor(part / PARTS);
    let [product, square, other] = [0, 0, 0];
    for (let y = Math.floor((row * height) / PARTS); y < Math.floor(((row + 1) * height) / PARTS); y++)
      for (
        let x = Math.floor((column * width) / PARTS);
        x < Math.floor(((column + 1) * width) / PARTS);
        x++
      ) {
        const [v, p] = [values[y * width + x]!, predicted[y * width + x]!];
        product += v * p;
        square += v * v;
        other += p * p;
      }
    if (product > LEAST_MATCH * Math.sqrt(square * other) && product > 0) present += 1;
  }
  return present / PARTS ** 2;
}

/** Share of the variance that is left when what is predicted is taken away, at most 1. */
function measureOwn({ values }: GrayField, predicted: Float64Array): number {
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  let variance = 0;
  let left = 0;
  for (let i = 0; i < values.length; i++) {
    variance += (values[i]! - mean) ** 2;
    left += (values[i]! - predicted[i]!) ** 2;
  }
  return variance === 0 ? 0 : Math.min(1, left / variance);
}
