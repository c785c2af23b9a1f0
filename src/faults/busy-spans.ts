/** Side of the squares that are looked at as a whole, px (own choice: a row of one is a cache line's quarter). */
const SQUARE = 16;

interface Plane {
  readonly widthPx: number;
  readonly heightPx: number;
  /** One number of 0…255 a pixel, rows from the top. */
  readonly codes: Uint8Array;
}

/** The squares of a plane around which anything goes on. */
export interface BusySquares {
  readonly widthPx: number;
  /** Of a square, px. */
  readonly side: number;
  readonly columns: number;
  /** 1 for those that count, row by row. */
  readonly busy: Uint8Array;
}

/**
 * All squares but those around which, within `reachPx` of each of their pixels both ways, no two pixels differ by
 * `contrast`: most of a drawing is such.
 */
export function findBusySquares(plane: Plane, contrast: number, reachPx: number): BusySquares {
  const side = Math.max(SQUARE, reachPx);
  const columns = Math.ceil(plane.widthPx / side);
  const rows = Math.ceil(plane.heightPx / side);
  const { low, high } = measureSquares(plane, side, columns, rows);
  const busy = new Uint8Array(columns * rows);
  for (let row = 0, at = 0; row < rows; row += 1)
    for (let column = 0; column < columns; column += 1, at += 1) {
      let [least, most] = [255, 0];
      for (let y = Math.max(0, row - 1); y <= Math.min(rows - 1, row + 1); y += 1)
        for (let x = Math.max(0, column - 1); x <= Math.min(columns - 1, column + 1); x += 1) {
          least = Math.min(least, low[y * columns + x]!);
          most = Math.max(most, high[y * columns + x]!);
        }
      if (most - least >= contrast) busy[at] = 1;
    }
  return { widthPx: plane.widthPx, side, columns, busy };
}

/** The stretches of a row that run through busy squares: the first column of each, and the one behind its last, in turn. */
export function busySpansOf({ widthPx, side, columns, busy }: BusySquares, y: number): readonly number[] {
  const row = Math.floor(y / side);
  const line = busy.subarray(row * columns, (row + 1) * columns);
  const spans: number[] = [];
  for (let start = line.indexOf(1); start !== -1; ) {
    const zero = line.indexOf(0, start);
    const end = zero === -1 ? columns : zero;
    spans.push(start * side, Math.min(end * side, widthPx));
    start = line.indexOf(1, end);
  }
  return spans;
}

/** The lowest and the highest code of each square. */
function measureSquares({ widthPx, heightPx, codes }: Plane, side: number, columns: number, rows: number) {
  const low = new Uint8Array(columns * rows).fill(255);
  const high = new Uint8Array(columns * rows);
  for (let y = 0; y < heightPx; y += 1) {
    const first = Math.floor(y / side) * columns;
    for (let column = 0; column < columns; column += 1) {
      let [least, most] = [low[first + column]!, high[first + column]!];
      const end = y * widthPx + Math.min(widthPx, (column + 1) * side);
      for (let at = y * widthPx + column * side; at < end; at += 1) {
        const code = codes[at]!;
        if (code < least) least = code;
        if (code > most) most = code;
      }
      low[first + column] = least;
      high[first + column] = most;
    }
  }
  return { low, high };
}
