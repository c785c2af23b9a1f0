import { type ConnectedArea, findConnectedAreas } from '../raster/connected-areas.ts';
import type { LightnessLines } from '../raster/lightness-lines.ts';
import { listToneChains, type StairLimits } from './tone-chains.ts';

/** A cell counts in a direction where at least half of what the lines cover of it lies in stairs (own choice). */
const COVERED = 0.5;
/** Tones this much shorter than the limit are looked at too: rows and columns together tell how wide they are across. */
const SHORTEST = 1 / 2;

/** A region whose tones go up or down in steps. */
export interface ToneBands {
  /** In cells of `cellPx` from the top left of the box of the lines. */
  readonly area: ConnectedArea;
  /** Mean width of its bands across them, pixels. */
  readonly bandPx: number;
  /** Mean step between two, L*. */
  readonly step: number;
}

/** What of the stairs of all rows, or of all columns, falls into a cell. */
interface CellStairs {
  readonly stairs: Float64Array;
  readonly lengths: Float64Array;
  readonly steps: Float64Array;
}

/**
 * The regions that are banded at least so wide, largest first. Rows and columns are those of one box; a cell is banded
 * where most of its rows or most of its columns lie in a stair. Bands that run aslant are longer in both than they are
 * wide: 1 / width^2 is the sum of 1 / length^2 of both.
 */
export function findToneBands(
  rows: LightnessLines,
  columns: LightnessLines,
  limits: StairLimits,
  cellPx: number,
): ToneBands[] {
  const { boxPx } = rows;
  const across = Math.ceil(boxPx.width / cellPx);
  const down = Math.ceil(boxPx.height / cellPx);
  const ofRows = sumStairs(rows, limits, cellPx, across, down);
  const ofColumns = sumStairs(columns, limits, cellPx, across, down);
  const both = [ofRows, ofColumns];
  const mask = new Uint8Array(across * down);
  for (let cell = 0; cell < mask.length; cell += 1)
    if (widthIn(both, cell) >= limits.leastFlatPx) mask[cell] = 1;
  return findConnectedAreas(mask, across).map((area) => ({ area, ...averageIn(area, both, mask, across) }));
}

function sumStairs(
  { along, values, at, length }: LightnessLines,
  limits: StairLimits,
  cellPx: number,
  across: number,
  down: number,
): CellStairs {
  const cells = across * down;
  const [covered, lengths, steps, lines] = [0, 1, 2, 3].map(() => new Float64Array(cells)) as [
    Float64Array,
    Float64Array,
    Float64Array,
    Float64Array,
  ];
  for (const [number, line] of values.entries()) {
    const side = Math.floor(at[number]! / cellPx);
    const cellAt = (place: number) => (along === 'x' ? side * across + place : place * across + side);
    for (let place = 0; place * cellPx < length; place += 1) lines[cellAt(place)]! += 1;
    for (const chain of listToneChains(line, { ...limits, leastFlatPx: limits.leastFlatPx * SHORTEST }))
      for (let place = Math.floor(chain.from / cellPx); place * cellPx < chain.to; place += 1) {
        const overlap = Math.min(chain.to, (place + 1) * cellPx) - Math.max(chain.from, place * cellPx);
        const cell = cellAt(place);
        covered[cell]! += overlap / cellPx;
        lengths[cell]! += (chain.flatPx * overlap) / cellPx;
        steps[cell]! += (chain.step * overlap) / cellPx;
      }
  }
  for (let cell = 0; cell < cells; cell += 1) if (covered[cell]! < COVERED * lines[cell]!) covered[cell] = 0;
  return { stairs: covered, lengths, steps };
}

/** Width of the bands in a cell, pixels; 0 where it has none. */
function widthIn(both: readonly CellStairs[], cell: number): number {
  let sum = 0;
  for (const { stairs, lengths } of both)
    if (stairs[cell]! > 0) sum += 1 / (lengths[cell]! / stairs[cell]!) ** 2;
  return sum === 0 ? 0 : 1 / Math.sqrt(sum);
}

function averageIn(
  { boxPx }: ConnectedArea,
  both: readonly CellStairs[],
  mask: Uint8Array,
  across: number,
): { readonly bandPx: number; readonly step: number } {
  let [cells, width, stairs, steps] = [0, 0, 0, 0];
  for (let y = boxPx.y; y < boxPx.y + boxPx.height; y += 1)
    for (let x = boxPx.x; x < boxPx.x + boxPx.width; x += 1) {
      const cell = y * across + x;
      if (mask[cell] === 0) continue;
      cells += 1;
      width += widthIn(both, cell);
      for (const one of both) {
        if (one.stairs[cell]! === 0) continue;
        stairs += one.stairs[cell]!;
        steps += one.steps[cell]!;
      }
    }
  return { bandPx: width / cells, step: steps / stairs };
}
