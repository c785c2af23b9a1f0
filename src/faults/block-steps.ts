import type { LightnessLines } from '../raster/lightness-lines.ts';
import type { BlockGrid } from './block-grid.ts';
import { STEP_CAP } from './step-profile.ts';

/** Steps on and between the lines of a grid, by tiles of the box. */
export interface BlockSteps {
  readonly columns: number;
  readonly rows: number;
  readonly tilePx: number;
  /** Root mean square of the steps across lines of the grid in each tile, L*; NaN where too few could be measured. */
  readonly onLines: Float64Array;
  /** Of the steps at places inside the blocks; NaN likewise. */
  readonly inside: Float64Array;
  /** Tiles that could be measured. */
  readonly measured: number;
  /** Nothing at all changes inside the blocks: they are single pixels enlarged, or drawn. */
  readonly isFlatInside: boolean;
}

/** Places inside a block that are compared with its line, in shares of the pitch. */
const INSIDE = [3 / 8, 1 / 2, 5 / 8];
/** Fewer measured lines than this in a tile say nothing, nor do they where that many are outlines of the picture (own choice). */
const FEWEST = 16;
const MOST_CAPPED = 1 / 4;
/** Tiles of 8 blocks: large enough to average, small enough to tell sky from leaves (own choice). */
const TILE_BLOCKS = 8;

/** Of the lines, every so many place the grid to a quarter of a pixel: enlarging blurs a step, and its profile has two sides. */
const PLACE_EVERY = 8;

/** Measures the steps of a grid in the lines that it was found in. */
export function measureBlockSteps(lines: readonly LightnessLines[], grid: BlockGrid): BlockSteps {
  const { boxPx } = lines[0]!;
  const tilePx = TILE_BLOCKS * grid.pitchPx;
  const columns = Math.ceil(boxPx.width / tilePx);
  const rows = Math.ceil(boxPx.height / tilePx);
  const onLines = makeTally(columns * rows);
  const inside = makeTally(columns * rows);
  // Half of an eighth of the pitch on both sides of a line: one pixel apart where the picture was not enlarged.
  const half = Math.max(0.5, grid.pitchPx / 16);
  for (const { along, values, at, length } of lines) {
    const first = settle(values, grid.firstPx[along], grid.pitchPx, half);
    for (const [number, line] of values.entries()) {
      const across = Math.floor(at[number]! / tilePx);
      for (let place = first; place < length; place += grid.pitchPx) {
        const down = Math.floor(place / tilePx);
        const tile = along === 'x' ? across * columns + down : down * columns + across;
        addStep(onLines, tile, stepAt(line, place, half));
        for (let i = 0; i < INSIDE.length; i += 1)
          addStep(inside, tile, stepAt(line, place + INSIDE[i]! * grid.pitchPx, half));
      }
    }
  }
  const isMeasured = onLines.counts.map((count, i) =>
    count >= FEWEST && onLines.capped[i]! <= MOST_CAPPED * (count + onLines.capped[i]!) ? 1 : 0,
  );
  const meanSquare = ({ sums, counts }: Tally) =>
    sums.map((sum, i) => (isMeasured[i] ? Math.sqrt(sum / counts[i]!) : Number.NaN));
  return {
    columns,
    rows,
    tilePx,
    onLines: meanSquare(onLines),
    inside: meanSquare(inside),
    measured: isMeasured.reduce((sum, one) => sum + one, 0),
    isFlatInside: inside.sums.every((sum) => sum === 0),
  };
}

/** Squares of steps in each tile, and how many steps were outlines of the picture. */
interface Tally {
  readonly sums: Float64Array;
  readonly counts: Float64Array;
  readonly capped: Float64Array;
}

function makeTally(tiles: number): Tally {
  return { sums: new Float64Array(tiles), counts: new Float64Array(tiles), capped: new Float64Array(tiles) };
}

function addStep({ sums, counts, capped }: Tally, tile: number, step: number): void {
  if (step >= STEP_CAP) {
    capped[tile]! += 1;
    return;
  }
  sums[tile]! += step * step;
  counts[tile]! += 1;
}

/** The place within an eighth of the pitch from `about` where the steps of some of the lines are largest. */
function settle(values: readonly Float32Array[], about: number, pitchPx: number, half: number): number {
  let best = about;
  let most = -1;
  for (let first = about - pitchPx / 8; first <= about + pitchPx / 8; first += 0.25) {
    // Whole pixels of an art that was not enlarged have their steps between two middles, exactly.
    const start = Math.round(4 * first) / 4;
    let sum = 0;
    for (let number = 0; number < values.length; number += PLACE_EVERY) {
      const line = values[number]!;
      for (let place = start; place < line.length; place += pitchPx) {
        const step = stepAt(line, place, half);
        if (step < STEP_CAP) sum += step;
      }
    }
    if (sum > most) [best, most] = [start, sum];
  }
  return best;
}

/** The step across a place beyond the mean change on both sides of it; the cap where the line ends too near. */
function stepAt(line: Float32Array, place: number, half: number): number {
  if (place - 3 * half < 0 || place + 3 * half > line.length - 1) return STEP_CAP;
  const step = valueAt(line, place + half) - valueAt(line, place - half);
  const around = valueAt(line, place + 3 * half) - valueAt(line, place - 3 * half);
  return Math.abs(1.5 * step - 0.5 * around);
}

function valueAt(line: Float32Array, place: number): number {
  const i = Math.floor(place);
  const share = place - i;
  return share === 0 ? line[i]! : line[i]! + (line[i + 1]! - line[i]!) * share;
}
