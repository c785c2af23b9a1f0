import { makeGridStage3 } from './grid-stage3.ts';
import { makeGridStage4 } from './grid-stage4.ts';
import type { Grid } from './lut.ts';
import type { Stage } from './stage.ts';

/**
 * Simplex interpolation in any number of dimensions: the cell is cut into simplices along its diagonal, the colour's
 * simplex is found by sorting its fractions, and only its n + 1 corners count. In three dimensions this is
 * tetrahedral interpolation. Inputs outside 0…1 are clipped.
 * @see J. Kasson et al., Performing color space conversions with three-dimensional linear interpolation,
 * Journal of Electronic Imaging 4(3), 1995 (cited from memory)
 */
export function makeGridStage(grid: Grid): Stage {
  if (grid.sizes.length === 3) return makeGridStage3(grid);
  if (grid.sizes.length === 4) return makeGridStage4(grid);
  return makeAnyGridStage(grid);
}

/** The same without regard to speed; the flat ones are held against it. */
export function makeAnyGridStage({ sizes, outputs, values }: Grid): Stage {
  const inputs = sizes.length;
  const strides = stridesOf(sizes, outputs);
  const fractions = new Float64Array(inputs);
  const order = new Int32Array(inputs);
  return (colour) => {
    let corner = 0;
    for (let i = 0; i < inputs; i++) {
      const last = sizes[i]! - 1;
      const value = colour[i]!;
      const place = value > 0 ? (value < 1 ? value * last : last) : 0;
      const cell = place < last ? Math.floor(place) : last - 1;
      const fraction = place - cell;
      corner += cell * strides[i]!;
      let rank = i;
      while (rank > 0 && fractions[rank - 1]! < fraction) {
        fractions[rank] = fractions[rank - 1]!;
        order[rank] = order[rank - 1]!;
        rank--;
      }
      fractions[rank] = fraction;
      order[rank] = i;
    }
    for (let k = 0; k < outputs; k++) {
      let at = corner + k;
      let before = 1;
      let sum = 0;
      for (let rank = 0; rank < inputs; rank++) {
        sum += (before - fractions[rank]!) * values[at]!;
        before = fractions[rank]!;
        at += strides[order[rank]!]!;
      }
      colour[k] = (sum + before * values[at]!) / 65535;
    }
  };
}

/** Distance in the value array from a node to the next one along each axis; the last axis varies fastest. */
function stridesOf(sizes: readonly number[], outputs: number): Int32Array {
  const strides = new Int32Array(sizes.length);
  let stride = outputs;
  for (let i = sizes.length - 1; i >= 0; i--) {
    strides[i] = stride;
    stride *= sizes[i]!;
  }
  return strides;
}
