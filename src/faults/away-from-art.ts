import { channelsOf, fullScaleOf, type Raster } from '../raster/raster.ts';
import { type AlphaCells, boxOfCell, FAINT_MOST } from './alpha-cells.ts';

/** An edge of art that lies across pixels leaves faint ones up to here, however large they print (common practice, no source). */
const EDGE_PX = 2;

/**
 * How many faint pixels of these cells have no art of more than half alpha within a cell, across, down or aslant, where
 * an edge or a narrow shadow lies; counted no further than `enough`.
 */
export function countAwayFromArt(
  raster: Raster,
  cells: AlphaCells,
  area: readonly number[],
  enough: number,
): number {
  const { widthPx, heightPx, data } = raster;
  const channels = channelsOf(raster);
  const reachPx = Math.max(EDGE_PX, cells.cellPx);
  const half = fullScaleOf(raster) / 2;
  const faintMost = ((FAINT_MOST + 0.5) * fullScaleOf(raster)) / 255;
  const isArt = (x: number, y: number) =>
    x >= 0 && y >= 0 && x < widthPx && y < heightPx && data[(y * widthPx + x + 1) * channels - 1]! > half;
  const isBesideArt = (x: number, y: number) => {
    for (let far = 1; far <= reachPx; far += 1)
      for (let dy = -far; dy <= far; dy += far)
        for (let dx = -far; dx <= far; dx += far) if (isArt(x + dx, y + dy)) return true;
    return false;
  };
  let count = 0;
  for (const cell of area) {
    const box = boxOfCell(cells, cell);
    for (let y = box.y; y < box.y + box.height; y += 1)
      for (let x = box.x; x < box.x + box.width; x += 1) {
        const alpha = data[(y * widthPx + x + 1) * channels - 1]!;
        if (alpha > 0 && alpha < faintMost && !isBesideArt(x, y)) count += 1;
        if (count >= enough) return count;
      }
  }
  return count;
}
