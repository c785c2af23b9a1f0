import type { RectPx } from '../geometry/rectangle.ts';
import { joinRuns, listRuns, rootOf } from '../raster/connected-areas.ts';
import { type AlphaCells, type AlphaKind, boxOfCell } from './alpha-cells.ts';

/** Cells that hang together (8-connected), each area a list of them, in the order of their first cells. */
export function listCellAreas(mask: Uint8Array, columns: number): readonly (readonly number[])[] {
  const runs = listRuns(mask, columns);
  const parent = joinRuns(runs);
  const areas = new Map<number, number[]>();
  for (let i = 0; i < runs.count; i += 1) {
    const root = rootOf(parent, i);
    const cells = areas.get(root) ?? [];
    areas.set(root, cells);
    for (let x = runs.from[i]!; x < runs.to[i]!; x += 1) cells.push(runs.y[i]! * columns + x);
  }
  return [...areas.values()];
}

/** What an area holds of one kind of alpha. */
export interface AreaSum {
  readonly pixels: number;
  /** Mean, 0…255. */
  readonly alpha: number;
  /** Mean as it prints over white, 0…1 each. */
  readonly overWhite: readonly [number, number, number];
  /** Mean of the colour itself, 0…1 each. */
  readonly opaque: readonly [number, number, number];
}

/** NaN where there is not one pixel of the kind. */
export function sumUpArea(area: readonly number[], kind: AlphaKind): AreaSum {
  let [pixels, alpha, r, g, b] = [0, 0, 0, 0, 0];
  for (const cell of area) {
    pixels += kind.pixels[cell]!;
    alpha += kind.alpha[cell]!;
    r += kind.colour[3 * cell]!;
    g += kind.colour[3 * cell + 1]!;
    b += kind.colour[3 * cell + 2]!;
  }
  const mean = alpha / pixels;
  const over = (sum: number) => Math.min(1, sum / pixels + 1 - mean / 255);
  const itself = (sum: number) => Math.min(1, (255 * sum) / alpha);
  return {
    pixels,
    alpha: mean,
    overWhite: [over(r), over(g), over(b)],
    opaque: [itself(r), itself(g), itself(b)],
  };
}

/** The box of an area, px of the artwork. */
export function boxOfArea(cells: AlphaCells, area: readonly number[]): RectPx {
  let [left, top, right, bottom] = [Infinity, Infinity, 0, 0];
  for (const cell of area) {
    const { x, y, width, height } = boxOfCell(cells, cell);
    left = Math.min(left, x);
    top = Math.min(top, y);
    right = Math.max(right, x + width);
    bottom = Math.max(bottom, y + height);
  }
  return { x: left, y: top, width: right - left, height: bottom - top };
}

/** Visits the cells that an area meets across and down, once for each side that they share; -1 beyond the box. */
export function visitNeighbours(
  { columns, rows }: AlphaCells,
  area: readonly number[],
  visit: (neighbour: number) => void,
): void {
  for (const cell of area) {
    const x = cell % columns;
    const y = (cell - x) / columns;
    visit(x > 0 ? cell - 1 : -1);
    visit(x < columns - 1 ? cell + 1 : -1);
    visit(y > 0 ? cell - columns : -1);
    visit(y < rows - 1 ? cell + columns : -1);
  }
}

/** Whether art ends at a cell: beyond the box, and where less than half of a cell is visible, as along every rim. */
export function isEnd({ visible, cellPx }: AlphaCells, cell: number): boolean {
  return cell === -1 || 2 * visible[cell]! < cellPx ** 2;
}
