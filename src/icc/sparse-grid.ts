import { planAxes } from './grid-axes.ts';
import type { GridPlan } from './pixel-grid.ts';
import type { ColourModel } from './profile.ts';
import { STAGE_CHANNELS, type Stage } from './stage.ts';

/** Whether between nodes whose first output lies from `least` to `most` nothing happens that anybody asks for. */
export type PlainTest = (least: number, most: number, level: Level) => boolean;

/** Cells are asked twice: as they are at first, and, where they are not plain, in the parts they are divided into. */
export type Level = 'coarse' | 'fine';

/** The side of a cell in nodes at both levels: the first that divides an axis' intervals is taken. */
const CELL_SIDES = [
  { coarse: 4, fine: 2 },
  { coarse: 3, fine: 3 },
  { coarse: 2, fine: 2 },
  { coarse: 1, fine: 1 },
] as const;

/**
 * `planGrid` for three channels that evaluates only where it matters: at the corners of coarse cells first, then at
 * those of the fine cells of what is not plain, then at all nodes of what still is not; the rest lies on straight lines
 * between the corners of its cell.
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
  /** Evaluates every node of a box whose sides are whole multiples of `by`, ends included. */
  const evaluateBox = (from: Node, size: Node, by: Node): void => {
    for (let x = from[0]; x <= from[0] + size[0]; x += by[0])
      for (let y = from[1]; y <= from[1] + size[1]; y += by[1])
        for (let z = from[2]; z <= from[2] + size[2]; z += by[2]) evaluate(x, y, z);
  };
  const strides: Node = [yNodes * outputs, zNodes * outputs, outputs];
  const makeLevel = (level: Level) => {
    const side = sizes.map((size) => sideOf(size - 1)[level]) as [number, number, number];
    const asks = (least: number, most: number) => isPlain(least, most, level);
    return {
      side,
      isPlainCell: makeCellTest(values, strides, side, asks),
      fill: makePlainFill(values, strides, side),
      plain: [] as number[],
    };
  };
  const [coarse, fine] = [makeLevel('coarse'), makeLevel('fine')];
  /** Asks of each cell of a box, and hands on what is not plain. */
  const divide = (
    from: Node,
    size: Node,
    { side, isPlainCell, plain }: typeof coarse,
    rest: (cell: Node) => void,
  ): void => {
    evaluateBox(from, size, side);
    for (let x = from[0]; x < from[0] + size[0]; x += side[0])
      for (let y = from[1]; y < from[1] + size[1]; y += side[1])
        for (let z = from[2]; z < from[2] + size[2]; z += side[2]) {
          const at = (x * yNodes + y * zNodes + z) * outputs;
          if (isPlainCell(at)) plain.push(at);
          else rest([x, y, z]);
        }
  };
  const finish = (part: Node) => evaluateBox(part, fine.side, ONE);
  divide([0, 0, 0], [sizes[0] - 1, sizes[1] - 1, sizes[2] - 1], coarse, (cell) =>
    divide(cell, coarse.side, fine, finish),
  );
  for (const { plain, fill } of [fine, coarse])
    for (const at of plain) for (let k = 0; k < outputs; k++) fill(at + k);
  return { sizes, shapes: axes.map(({ placeOf }) => placeOf), values, outputs };
}

const ONE = [1, 1, 1] as const;

function sideOf(intervals: number): Readonly<Record<Level, number>> {
  return CELL_SIDES.find(({ coarse }) => intervals % coarse === 0)!;
}

type Node = readonly [number, number, number];

/** Says of the cell whose first corner lies at an index whether the range of its corners passes the test. */
function makeCellTest(
  values: Float32Array,
  [ax, ay, az]: Node,
  [sx, sy, sz]: Node,
  isPlain: (least: number, most: number) => boolean,
): (at: number) => boolean {
  const [x, y, z] = [sx * ax, sy * ay, sz * az];
  return (at) => {
    let least = Number.POSITIVE_INFINITY;
    let most = Number.NEGATIVE_INFINITY;
    for (let i = 0; i < 8; i++) {
      const corner = values[at + (i & 1) * x + ((i >> 1) & 1) * y + (i >> 2) * z]!;
      least = Math.min(least, corner);
      most = Math.max(most, corner);
    }
    return isPlain(least, most);
  };
}

/**
 * Fills one output of the coarse cell whose first corner lies at an index, on straight lines between its corners along
 * each axis. Nodes that have a value keep it. Written flat: cells are many, and closures cost more than the numbers.
 */
function makePlainFill(values: Float32Array, [ax, ay, az]: Node, [sx, sy, sz]: Node): (at: number) => void {
  const [x, y, z] = [sx * ax, sy * ay, sz * az];
  return (at) => {
    const corner = values[at]!;
    const [alongX, alongY, alongZ] = [
      values[at + x]! - corner,
      values[at + y]! - corner,
      values[at + z]! - corner,
    ];
    const twistXY = values[at + x + y]! - corner - alongX - alongY;
    const twistXZ = values[at + x + z]! - corner - alongX - alongZ;
    const twistYZ = values[at + y + z]! - corner - alongY - alongZ;
    const twist = values[at + x + y + z]! - corner - alongX - alongY - alongZ - twistXY - twistXZ - twistYZ;
    for (let i = 0; i <= sx; i++) {
      const u = i / sx;
      for (let j = 0; j <= sy; j++) {
        const v = j / sy;
        const start = corner + alongX * u + (alongY + twistXY * u) * v;
        const slope = (alongZ + twistXZ * u + (twistYZ + twist * u) * v) / sz;
        let node = at + i * ax + j * ay;
        for (let k = 0; k <= sz; k++, node += az)
          if (Number.isNaN(values[node]!)) values[node] = start + slope * k;
      }
    }
  };
}
