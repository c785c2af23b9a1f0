/** Numbers kept for each node, used or not, so that a node begins at a multiple of four. */
export const NODE_NUMBERS = 4;

/** Weights of corners are whole numbers that sum up to 2^13: with 18-bit node values, products stay within 31 bits. */
export const WEIGHT_BITS = 13;
const WEIGHT_ONE = 1 << WEIGHT_BITS;

/** Node values reach from -1 to almost 2, so that a colour beyond the target space is clipped after interpolation. */
const LOWEST = -1;
const HIGHEST = 1.99;

/** For every code of a channel: the offset of its grid cell, and its place within the cell in units of 2^-13. */
export interface GridAxis {
  readonly offsets: Int32Array;
  readonly weights: Int32Array;
  /** Offset from a node to the next along this axis. */
  readonly stride: number;
}

/** A grid made ready for pixels of one depth. */
export interface PixelGrid {
  readonly axes: readonly GridAxis[];
  readonly nodes: Int16Array | Int32Array;
  /** 1…4 */
  readonly outputs: number;
  readonly fullScale: 255 | 65535;
  /** Bits to drop from a weighted sum of nodes. */
  readonly shift: number;
}

/** What a grid is made from; see `compileGrid`. */
export interface GridPlan {
  /** Nodes along each axis; the first axis varies slowest. */
  readonly sizes: readonly number[];
  /** A channel's value, 0…1, to its place along the axis, 0…1; must rise. */
  readonly shapes: readonly ((value: number) => number)[];
  /** Values of 0…1 at the nodes, `outputs` for each. */
  readonly values: Float32Array;
  readonly outputs: number;
}

/**
 * `sourceScale` is the full scale of the samples that are looked up, `fullScale` that of the results. 8-bit results
 * keep 6 bits below the point while they are summed, 16-bit results none.
 */
export function makePixelGrid(
  plan: GridPlan,
  sourceScale: 255 | 65535,
  fullScale: 255 | 65535 = sourceScale,
): PixelGrid {
  const { sizes, shapes, values, outputs } = plan;
  const spare = fullScale === 255 ? 6 : 0;
  const scale = fullScale * 2 ** spare;
  const count = values.length / outputs;
  const nodes =
    fullScale === 255 ? new Int16Array(count * NODE_NUMBERS) : new Int32Array(count * NODE_NUMBERS);
  for (let node = 0; node < count; node++)
    for (let k = 0; k < outputs; k++) {
      const value = Math.min(HIGHEST, Math.max(LOWEST, values[node * outputs + k]!));
      nodes[node * NODE_NUMBERS + k] = Math.round(value * scale);
    }
  let stride = count * NODE_NUMBERS;
  const axes = sizes.map((size, i) => {
    stride /= size;
    return makeAxis(shapes[i]!, size, stride, sourceScale);
  });
  return { axes, nodes, outputs, fullScale, shift: WEIGHT_BITS + spare };
}

function makeAxis(
  shape: (value: number) => number,
  size: number,
  stride: number,
  fullScale: number,
): GridAxis {
  const offsets = new Int32Array(fullScale + 1);
  const weights = new Int32Array(fullScale + 1);
  for (let code = 0; code <= fullScale; code++) {
    const place = Math.min(1, Math.max(0, shape(code / fullScale))) * (size - 1);
    const cell = Math.min(Math.floor(place), size - 2);
    offsets[code] = cell * stride;
    weights[code] = Math.round((place - cell) * WEIGHT_ONE);
  }
  return { offsets, weights, stride };
}

/** A code that lies outside 0…`fullScale`, which few do: whoever calls asks first, in one comparison. */
export function clip(code: number, fullScale: 255 | 65535): number {
  return code < 0 ? 0 : Math.min(code, fullScale);
}
