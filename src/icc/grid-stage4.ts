import type { Grid } from './lut.ts';
import type { Stage } from './stage.ts';

/**
 * `makeGridStage` for four inputs, written flat: fractions and strides are sorted together, largest fraction first. Swaps
 * by destructuring would make an array each until the code is hot, and most of the time of a table is spent before.
 */
export function makeGridStage4({ sizes, outputs, values }: Grid): Stage {
  const [wLast, xLast, yLast, zLast] = [sizes[0]! - 1, sizes[1]! - 1, sizes[2]! - 1, sizes[3]! - 1];
  const zStride = outputs;
  const yStride = zStride * sizes[3]!;
  const xStride = yStride * sizes[2]!;
  const wStride = xStride * sizes[1]!;
  return (colour) => {
    const w = Math.min(1, Math.max(0, colour[0]!)) * wLast;
    const x = Math.min(1, Math.max(0, colour[1]!)) * xLast;
    const y = Math.min(1, Math.max(0, colour[2]!)) * yLast;
    const z = Math.min(1, Math.max(0, colour[3]!)) * zLast;
    const wCell = Math.min(Math.floor(w), wLast - 1);
    const xCell = Math.min(Math.floor(x), xLast - 1);
    const yCell = Math.min(Math.floor(y), yLast - 1);
    const zCell = Math.min(Math.floor(z), zLast - 1);
    let f1 = w - wCell;
    let f2 = x - xCell;
    let f3 = y - yCell;
    let f4 = z - zCell;
    let s1 = wStride;
    let s2 = xStride;
    let s3 = yStride;
    let s4 = zStride;
    let fraction: number;
    let stride: number;
    if (f1 < f2) {
      fraction = f1;
      f1 = f2;
      f2 = fraction;
      stride = s1;
      s1 = s2;
      s2 = stride;
    }
    if (f3 < f4) {
      fraction = f3;
      f3 = f4;
      f4 = fraction;
      stride = s3;
      s3 = s4;
      s4 = stride;
    }
    if (f1 < f3) {
      fraction = f1;
      f1 = f3;
      f3 = fraction;
      stride = s1;
      s1 = s3;
      s3 = stride;
    }
    if (f2 < f4) {
      fraction = f2;
      f2 = f4;
      f4 = fraction;
      stride = s2;
      s2 = s4;
      s4 = stride;
    }
    if (f2 < f3) {
      fraction = f2;
      f2 = f3;
      f3 = fraction;
      stride = s2;
      s2 = s3;
      s3 = stride;
    }
    const a = wCell * wStride + xCell * xStride + yCell * yStride + zCell * zStride;
    const b = s1;
    const c = b + s2;
    const d = c + s3;
    const e = d + s4;
    const wa = (1 - f1) / 65535;
    const wb = (f1 - f2) / 65535;
    const wc = (f2 - f3) / 65535;
    const wd = (f3 - f4) / 65535;
    const we = f4 / 65535;
    for (let k = a; k < a + outputs; k++)
      colour[k - a] =
        wa * values[k]! +
        wb * values[k + b]! +
        wc * values[k + c]! +
        wd * values[k + d]! +
        we * values[k + e]!;
  };
}
