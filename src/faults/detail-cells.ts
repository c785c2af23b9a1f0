import type { LightnessCells } from '../raster/lightness-cells.ts';

/** Where a picture has strong detail, in cells; rows from the top. */
export interface DetailCells {
  readonly width: number;
  readonly height: number;
  /** Largest less smallest L* within each cell. */
  readonly contrast: Float64Array;
  /** 1 for cells in and about which edges run in several directions, as in lettering and features; else 0. */
  readonly crossed: Uint8Array;
  /** 1 for those of them with strong contrast. */
  readonly detail: Uint8Array;
}

/** Cells about one, each way, whose edges are held against each other (own choice: letters and features are as small). */
const AROUND = 1;
/** Share of the edges' energy across their main direction from which on they have no single one (own choice). */
const ACROSS = 0.1;

/**
 * Cells of `side` x `side` samples of a small picture of L*; contrast of `strong` L* or more is strong. A straight or slowly bent edge, a horizon or a frame, has all its energy in one direction and is no detail.
 * @see C. Harris and M. Stephens, "A combined corner and edge detector", Alvey Vision Conference 1988, for the matrix
 */
export function findDetailCells(samples: LightnessCells, side: number, strong: number): DetailCells {
  const width = Math.ceil(samples.width / side);
  const height = Math.ceil(samples.height / side);
  const contrast = new Float64Array(width * height);
  const edges = new Float64Array(3 * width * height);
  for (let y = 0, cell = 0; y < height; y += 1)
    for (let x = 0; x < width; x += 1, cell += 1) contrast[cell] = readCell(samples, side, x, y, edges, cell);
  const crossed = Uint8Array.from(contrast, (_, cell) =>
    hasSeveralDirections(edges, width, height, cell) ? 1 : 0,
  );
  const detail = crossed.map((is, cell) => (contrast[cell]! >= strong ? is : 0));
  return { width, height, contrast, crossed, detail };
}

/** The contrast of a cell; its edges' energy along x, y and both is added up in `edges`. */
function readCell(
  { width, height, values }: LightnessCells,
  side: number,
  x: number,
  y: number,
  edges: Float64Array,
  cell: number,
): number {
  let [least, most] = [Infinity, -Infinity];
  // One row and column more than the cell: a step between two cells belongs to the first.
  const right = Math.min(width - 1, (x + 1) * side);
  const bottom = Math.min(height - 1, (y + 1) * side);
  for (let row = y * side; row <= bottom; row += 1)
    for (let column = x * side; column <= right; column += 1) {
      const at = row * width + column;
      const value = values[at]!;
      if (value < least) least = value;
      if (value > most) most = value;
      if (row === bottom || column === right) continue;
      const [next, below, aslant] = [values[at + 1]!, values[at + width]!, values[at + width + 1]!];
      // Both at the middle of the four: differences at two places would give a slanting edge two directions.
      const dx = next - value + aslant - below;
      const dy = below - value + aslant - next;
      edges[3 * cell]! += dx * dx;
      edges[3 * cell + 1]! += dy * dy;
      edges[3 * cell + 2]! += dx * dy;
    }
  return most - least;
}

/** The matrix of the edges in and about a cell has its lesser eigenvalue not far below the greater. */
function hasSeveralDirections(edges: Float64Array, width: number, height: number, cell: number): boolean {
  const [x, y] = [cell % width, Math.floor(cell / width)];
  let [xx, yy, xy] = [0, 0, 0];
  for (let row = Math.max(0, y - AROUND); row <= Math.min(height - 1, y + AROUND); row += 1)
    for (let column = Math.max(0, x - AROUND); column <= Math.min(width - 1, x + AROUND); column += 1) {
      const at = 3 * (row * width + column);
      xx += edges[at]!;
      yy += edges[at + 1]!;
      xy += edges[at + 2]!;
    }
  const half = (xx + yy) / 2;
  const apart = Math.hypot((xx - yy) / 2, xy);
  return half > 0 && half - apart >= ACROSS * (half + apart);
}
