import type { Grid } from './lut.ts';
import type { Stage } from './stage.ts';

/** `makeGridStage` for three inputs, written flat: the six orders of the fractions are the six tetrahedra of a cell. */
export function makeGridStage3({ sizes, outputs, values }: Grid): Stage {
  const [xLast, yLast, zLast] = [sizes[0]! - 1, sizes[1]! - 1, sizes[2]! - 1];
  const zStride = outputs;
  const yStride = zStride * sizes[2]!;
  const xStride = yStride * sizes[1]!;
  const whole = xStride + yStride + zStride;
  return (colour) => {
    const x = Math.min(1, Math.max(0, colour[0]!)) * xLast;
    const y = Math.min(1, Math.max(0, colour[1]!)) * yLast;
    const z = Math.min(1, Math.max(0, colour[2]!)) * zLast;
    const xCell = Math.min(Math.floor(x), xLast - 1);
    const yCell = Math.min(Math.floor(y), yLast - 1);
    const zCell = Math.min(Math.floor(z), zLast - 1);
    const fx = x - xCell;
    const fy = y - yCell;
    const fz = z - zCell;
    let high = fx;
    let middle = fy;
    let low = fz;
    let first = xStride;
    let second = xStride + yStride;
    if (fx >= fy) {
      if (fz > fx) {
        high = fz;
        middle = fx;
        low = fy;
        first = zStride;
        second = xStride + zStride;
      } else if (fz > fy) {
        middle = fz;
        low = fy;
        second = xStride + zStride;
      }
    } else if (fz > fy) {
      high = fz;
      middle = fy;
      low = fx;
      first = zStride;
      second = yStride + zStride;
    } else if (fz > fx) {
      high = fy;
      middle = fz;
      low = fx;
      first = yStride;
      second = yStride + zStride;
    } else {
      high = fy;
      middle = fx;
      first = yStride;
    }
    const a = xCell * xStride + yCell * yStride + zCell * zStride;
    const wa = (1 - high) / 65535;
    const wb = (high - middle) / 65535;
    const wc = (middle - low) / 65535;
    const wd = low / 65535;
    for (let k = a; k < a + outputs; k++)
      colour[k - a] =
        wa * values[k]! + wb * values[k + first]! + wc * values[k + second]! + wd * values[k + whole]!;
  };
}
