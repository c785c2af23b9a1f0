import type { RectMm } from '../../geometry/rectangle.ts';

/** Cells of a millimetre, larger on pages so large that there would be more than this many. */
const [CELL_MM, MOST_CELLS] = [1, 1_000_000];

/** How good a place is for a mark: the lowest wins; Infinity for a place that will not do. */
export type Cost = (place: RectMm) => number;

/**
 * The part of the page that is still free, in cells. A cell that is touched is taken, so nothing that is placed here
 * overlaps anything that was taken before.
 */
export class FreeRoom {
  readonly #area: RectMm;
  readonly #cellMm: number;
  readonly #columns: number;
  readonly #rows: number;
  readonly #taken: Uint8Array;
  /** Of each corner of a cell: how many cells to the left and above are taken; null when that has changed. */
  #sums: Int32Array | null = null;

  constructor(area: RectMm) {
    this.#area = area;
    const [width, height] = [Math.max(0, area.width), Math.max(0, area.height)];
    this.#cellMm = Math.max(CELL_MM, Math.sqrt((width * height) / MOST_CELLS));
    this.#columns = Math.floor(width / this.#cellMm + 1e-9);
    this.#rows = Math.floor(height / this.#cellMm + 1e-9);
    this.#taken = new Uint8Array(this.#columns * this.#rows);
  }

  /** Takes every cell that the box touches. */
  take(box: RectMm): void {
    const cell = (mm: number, most: number) => Math.min(most, Math.max(0, mm));
    const left = cell(Math.floor((box.x - this.#area.x) / this.#cellMm), this.#columns);
    const right = cell(Math.ceil((box.x + box.width - this.#area.x) / this.#cellMm), this.#columns);
    const top = cell(Math.floor((box.y - this.#area.y) / this.#cellMm), this.#rows);
    const bottom = cell(Math.ceil((box.y + box.height - this.#area.y) / this.#cellMm), this.#rows);
    for (let row = top; row < bottom; row++)
      this.#taken.fill(1, row * this.#columns + left, row * this.#columns + right);
    this.#sums = null;
  }

  /** The cheapest free place for a box of this size, the topmost and then leftmost of equals; null for none. */
  findPlace(widthMm: number, heightMm: number, cost: Cost): RectMm | null {
    this.#sums ??= this.#sumUp();
    const sums = this.#sums;
    const columns = Math.ceil(widthMm / this.#cellMm - 1e-9);
    const rows = Math.ceil(heightMm / this.#cellMm - 1e-9);
    const stride = this.#columns + 1;
    let best: RectMm | null = null;
    let least = Infinity;
    // One for all places that are asked about: there are tens of thousands.
    const place = { x: 0, y: 0, width: widthMm, height: heightMm };
    for (let row = 0; row + rows <= this.#rows; row++)
      for (let column = 0; column + columns <= this.#columns; column++) {
        const at = row * stride + column;
        const below = at + rows * stride;
        if (sums[below + columns]! - sums[below]! - sums[at + columns]! + sums[at]! > 0) continue;
        place.x = this.#area.x + column * this.#cellMm;
        place.y = this.#area.y + row * this.#cellMm;
        const price = cost(place);
        if (price >= least) continue;
        least = price;
        best = { ...place };
      }
    return best;
  }

  #sumUp(): Int32Array {
    const stride = this.#columns + 1;
    const sums = new Int32Array(stride * (this.#rows + 1));
    for (let row = 0; row < this.#rows; row++) {
      let inRow = 0;
      for (let column = 0; column < this.#columns; column++) {
        inRow += this.#taken[row * this.#columns + column]!;
        sums[(row + 1) * stride + column + 1] = sums[row * stride + column + 1]! + inRow;
      }
    }
    return sums;
  }
}
