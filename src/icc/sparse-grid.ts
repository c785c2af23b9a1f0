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
  /** The first output, which says whether a cell is plain. */
  const valueAt = (x: number, y: number, z: number) => values[(x * yNodes + y * zNodes + z) * outputs]!;

  const evaluateBox = (from: Node, to: Node, by: Node): void => {
    for (let x = from[0]; x < to[0]; x += by[0])
      for (let y = from[1]; y < to[1]; y += by[1])
        for (let z = from[2]; z < to[2]; z += by[2]) evaluate(x, y, z);
  };
  evaluateBox([0, 0, 0], sizes, steps);
  const plain: Node[] = [];
  for (let x = 0; x < sizes[0] - 1; x += sx)
    for (let y = 0; y < sizes[1] - 1; y += sy)
      for (let z = 0; z < sizes[2] - 1; z += sz) {
        let least = Number.POSITIVE_INFINITY;
        let most = Number.NEGATIVE_INFINITY;
        for (let i = 0; i < 8; i++) {
          const corner = valueAt(x + (i & 1) * sx, y + ((i >> 1) & 1) * sy, z + (i >> 2) * sz);
          least = Math.min(least, corner);
          most = Math.max(most, corner);
        }
        if (isPlain(least, most)) plain.push([x, y, z]);
        else evaluateBox([x, y, z], [x + sx + 1, y + sy + 1, z + sz + 1], ONE);
      }
  const fillPlain = makePlainFill(values, [yNodes * outputs, zNodes * outputs, outputs], steps);
  for (const [x, y, z] of plain)
    for (let k = 0; k < outputs; k++) fillPlain((x * yNodes + y * zNodes + z) * outputs + k);
  return { sizes, shapes: axes.map(({ placeOf }) => placeOf), values, outputs };
}

const ONE = [1, 1, 1] as const;

type Node = readonly [number, number, number];

/**
 * Fills one output of the coarse cell whose first corner lies at an index, on straight lines between its corners along
 * each axis. Nodes that have a value keep it. Written flat: cells are many, and closures cost more than the numbers.
 */
function makePlainFill(values: Float32Array, [ax, ay, az]: Node, [sx, sy, sz]: Node): (at: number) => void {
  const mix = (from: number, to: number, part: number) => from + (to - from) * part;
  const [x, y, z] = [sx * ax, sy * ay, sz * az];
  return (at) => {
    for (let i = 0; i <= sx; i++) {
      const a = mix(values[at]!, values[at + x]!, i / sx);
      const b = mix(values[at + y]!, values[at + x + y]!, i / sx);
      const c = mix(values[at + z]!, values[at + x + z]!, i / sx);
      const d = mix(values[at + y + z]!, values[at + x + y + z]!, i / sx);
      for (let j = 0; j <= sy; j++) {
        const near = mix(a, b, j / sy);
        const far = mix(c, d, j / sy);
        for (let k = 0; k <= sz; k++) {
          const node = at + i * ax + j * ay + k * az;
          if (Number.isNaN(values[node]!)) values[node] = mix(near, far, k / sz);
        }
      }
    }
  };
}
