import type { RectMm } from '../../geometry/rectangle.ts';

/** Cells of a millimetre, larger on pages so large that there would be more than this many. */
const [CELL_MM, MOST_CELLS] = [1, 1_000_000];

/**
 * How good a place is for a mark: the lowest wins; Infinity for a place that will not do. `least` is the price of the best
 * place so far: once that is reached, what the rest would add need not be found out.
 */
export type Cost = (place: RectMm, least: number) => number;

/**
 * The part of the page that is still free, in cells. A cell that is touched is taken, so nothing that is placed here
 * overlaps anything that was taken before.
 */
export class FreeRoom {
  readonly #area: RectMm;
  readonly #cellMm: number;
  readonly #columns: number;
  readonly #rows: number;
  /** Of each cell, row by row: how many free ones go down from it, itself counted; 0 where it is taken. */
  readonly #freeDown: Uint32Array;
  /** Sizes in cells that found no place. They never will: room is taken, never given back. */
  readonly #tooLarge: { readonly columns: number; readonly rows: number }[] = [];

  constructor(area: RectMm) {
    this.#area = area;
    const [width, height] = [Math.max(0, area.width), Math.max(0, area.height)];
    this.#cellMm = Math.max(CELL_MM, Math.sqrt((width * height) / MOST_CELLS));
    this.#columns = Math.floor(width / this.#cellMm + 1e-9);
    this.#rows = Math.floor(height / this.#cellMm + 1e-9);
    this.#freeDown = new Uint32Array(this.#columns * this.#rows);
    for (let row = 0; row < this.#rows; row++)
      this.#freeDown.fill(this.#rows - row, row * this.#columns, (row + 1) * this.#columns);
  }

  /** Takes every cell that the box touches. */
  take(box: RectMm): void {
    const cell = (mm: number, most: number) => Math.min(most, Math.max(0, mm));
    const left = cell(Math.floor((box.x - this.#area.x) / this.#cellMm), this.#columns);
    const right = cell(Math.ceil((box.x + box.width - this.#area.x) / this.#cellMm), this.#columns);
    const top = cell(Math.floor((box.y - this.#area.y) / this.#cellMm), this.#rows);
    const bottom = cell(Math.ceil((box.y + box.height - this.#area.y) / this.#cellMm), this.#rows);
    if (right <= left || bottom <= top) return;
    for (let row = top; row < bottom; row++)
      this.#freeDown.fill(0, row * this.#columns + left, row * this.#columns + right);
    for (let column = left; column < right; column++) this.#countUpFrom(top - 1, column);
  }

  /** Free cells above one that was taken have fewer below them now, as far up as there is none that is taken. */
  #countUpFrom(lowest: number, column: number): void {
    for (let row = lowest; row >= 0; row--) {
      const at = row * this.#columns + column;
      if (this.#freeDown[at] === 0) return;
      this.#freeDown[at] = lowest - row + 1;
    }
  }

  /** The cheapest free place for a box of this size, the topmost and then leftmost of equals; null for none. */
  findPlace(widthMm: number, heightMm: number, cost: Cost): RectMm | null {
    // A label without ink may have no width: it has a place nevertheless.
    const columns = Math.max(1, Math.ceil(widthMm / this.#cellMm - 1e-9));
    const rows = Math.max(1, Math.ceil(heightMm / this.#cellMm - 1e-9));
    if (this.#tooLarge.some((size) => size.columns <= columns && size.rows <= rows)) return null;
    let best: RectMm | null = null;
    let least = Infinity;
    let anywhere = false;
    // One for all places that are asked about: there are tens of thousands.
    const place = { x: 0, y: 0, width: widthMm, height: heightMm };
    for (let row = 0; row + rows <= this.#rows; row++) {
      const start = row * this.#columns;
      let free = 0;
      for (let last = 0; last < this.#columns; last++) {
        free = this.#freeDown[start + last]! >= rows ? free + 1 : 0;
        if (free < columns) continue;
        anywhere = true;
        place.x = this.#area.x + (last - columns + 1) * this.#cellMm;
        place.y = this.#area.y + row * this.#cellMm;
        const price = cost(place, least);
        if (price >= least) continue;
        least = price;
        best = { ...place };
      }
    }
    if (!anywhere) this.#tooLarge.push({ columns, rows });
    return best;
  }
}
