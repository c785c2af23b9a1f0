import type { RectPx } from '../geometry/rectangle.ts';
import { evenPlaces } from './even-places.ts';
import type { Raster } from './raster.ts';
import { lightnessSource, readLightness } from './read-lightness.ts';

/** A small picture of L*, rows from the top. */
export interface LightnessCells {
  readonly width: number;
  readonly height: number;
  /** L* of each cell over white, 0…100. */
  readonly values: Float64Array;
  /** Side of a cell in pixels of the raster. */
  readonly cellPx: number;
}

/** Pixels that are read of a cell along each side: their mean lies close enough to that of all (tests/raster). */
const READ = 4;

/**
 * The box in square cells of whole pixels, so large that no side has more than `most` of them. Each is the mean of up to
 * 4 x 4 of its pixels, evenly spread. What is left at the right and bottom of the last whole cell is not read.
 * Gray or rgb.
 */
export function readLightnessCells(raster: Raster, boxPx: RectPx, most: number): LightnessCells {
  const cellPx = Math.ceil(Math.max(boxPx.width, boxPx.height) / most);
  const width = Math.floor(boxPx.width / cellPx);
  const height = Math.floor(boxPx.height / cellPx);
  const count = Math.min(READ, cellPx);
  const steps = evenPlaces(cellPx, count);
  const offsets = new Int32Array(width * count);
  for (let i = 0; i < offsets.length; i += 1) offsets[i] = Math.floor(i / count) * cellPx + steps[i % count]!;
  const source = lightnessSource(raster);
  const row = new Float32Array(width * count);
  const values = new Float64Array(width * height);
  for (let y = 0; y < height; y += 1)
    for (const dy of steps) {
      const first = (boxPx.y + y * cellPx + dy) * raster.widthPx + boxPx.x;
      readLightness(source, first, offsets, { values: row, from: 0, step: 1 });
      for (let i = 0, cell = y * width; i < row.length; cell += 1)
        for (const next = i + count; i < next; i += 1) values[cell]! += row[i]! / (count * count);
    }
  return { width, height, values, cellPx };
}

/** Cells twice as large, each the mean of four; an odd column or row at the end is left out. */
export function halveCells({ width, height, values, cellPx }: LightnessCells): LightnessCells {
  const [across, down] = [Math.floor(width / 2), Math.floor(height / 2)];
  const halved = new Float64Array(across * down);
  for (let y = 0, cell = 0; y < down; y += 1)
    for (let x = 0; x < across; x += 1, cell += 1) {
      const at = 2 * (y * width + x);
      halved[cell] = (values[at]! + values[at + 1]! + values[at + width]! + values[at + width + 1]!) / 4;
    }
  return { width: across, height: down, values: halved, cellPx: 2 * cellPx };
}
