import { planAxes } from './grid-axes.ts';
import type { GridPlan } from './pixel-grid.ts';
import type { ColourModel } from './profile.ts';
import { STAGE_CHANNELS, type Stage } from './stage.ts';

/** By how much the coarse grid may be coarser along an axis: the largest that divides its intervals is taken. */
const STRIDES = [3, 2, 1] as const;

/** Whether between nodes whose first output lies from `least` to `most` nothing happens that anybody asks for. */
export type PlainTest = (least: number, most: number) => boolean;

/**
 * `planGrid` for three channels that evaluates only where it matters: at the nodes of a coarse grid first, then at all
 * nodes of the coarse cells that are not plain; the rest lies on straight lines between the coarse nodes.
 */
export function planSparseGrid(
  source: ColourModel,
  stage: Stage,
  outputs: number,
  isPlain: PlainTest,
): GridPlan {
  const axes = planAxes(source, 3);
  const sizes = axes.map(({ size }) => size) as [number, number, number];
  const places = axes.map(({ size, valueAt }) =>
    Float64Array.from({ length: size }, (_, node) => valueAt(node / (size - 1))),
  ) as [Float64Array, Float64Array, Float64Array];
  const strides = sizes.map((size) => STRIDES.find((stride) => (size - 1) % stride === 0)!);
  const [sx, sy, sz] = strides as [number, number, number];
  const steps: Node = [sx, sy, sz];
  const [yNodes, zNodes] = [sizes[1] * sizes[2], sizes[2]];
  const values = new Float32Array(sizes[0] * yNodes * outputs).fill(Number.NaN);
  const colour = new Float64Array(STAGE_CHANNELS);
  const evaluate = (x: number, y: number, z: number): void => {
    const at = (x * yNodes + y * zNodes + z) * outputs;
    if (!Number.isNaN(values[at]!)) return;
    colour[0] = places[0][x]!;
    colour[1] = places[1][y]!;
    colour[2] = places[2][z]!;
    stage(colour);
    for (let k = 0; k < outputs; k++) values[at + k] = colour[k]!;
  };
  const valueAt = (x: number, y: number, z: number, k: number) =>
    values[(x * yNodes + y * zNodes + z) * outputs + k]!;

  const evaluateBox = (from: Node, to: Node, by: Node): void => {
    for (let x = from[0]; x < to[0]; x += by[0])
      for (let y = from[1]; y < to[1]; y += by[1])
        for (let z = from[2]; z < to[2]; z += by[2]) evaluate(x, y, z);
  };
  evaluateBox([0, 0, 0], sizes, steps);
  const plain: Node[] = [];
  const corners = new Float64Array(8);
  for (let x = 0; x < sizes[0] - 1; x += sx)
    for (let y = 0; y < sizes[1] - 1; y += sy)
      for (let z = 0; z < sizes[2] - 1; z += sz) {
        for (let i = 0; i < 8; i++)
          corners[i] = valueAt(x + (i & 1) * sx, y + ((i >> 1) & 1) * sy, z + (i >> 2) * sz, 0);
        if (isPlain(Math.min(...corners), Math.max(...corners))) plain.push([x, y, z]);
        else evaluateBox([x, y, z], [x + sx + 1, y + sy + 1, z + sz + 1], ONE);
      }
  for (const [x, y, z] of plain)
    walk([x, y, z], [x + sx + 1, y + sy + 1, z + sz + 1], ONE, (i, j, k) => {
      const at = (i * yNodes + j * zNodes + k) * outputs;
      if (!Number.isNaN(values[at]!)) return;
      const [u, v, w] = [(i - x) / sx, (j - y) / sy, (k - z) / sz];
      for (let output = 0; output < outputs; output++) {
        const along = (jj: number, kk: number) => {
          const from = valueAt(x, jj, kk, output);
          return from + (valueAt(x + sx, jj, kk, output) - from) * u;
        };
        const near = along(y, z) + (along(y + sy, z) - along(y, z)) * v;
        const far = along(y, z + sz) + (along(y + sy, z + sz) - along(y, z + sz)) * v;
        values[at + output] = near + (far - near) * w;
      }
    });
  return { sizes, shapes: axes.map(({ placeOf }) => placeOf), values, outputs };
}

const ONE = [1, 1, 1] as const;

type Node = readonly [number, number, number];

/** The nodes from `from` to before `to`, in steps. */
function walk(from: Node, to: Node, steps: Node, visit: (x: number, y: number, z: number) => void): void {
  for (let x = from[0]; x < to[0]; x += steps[0])
    for (let y = from[1]; y < to[1]; y += steps[1])
      for (let z = from[2]; z < to[2]; z += steps[2]) visit(x, y, z);
}
