/** Tells where neighbouring pixels differ, by the lowest and highest value in tiles of a picture. */
export class ShadowTiles {
  readonly #across: number;
  readonly #down: number;
  readonly #low: Uint16Array;
  readonly #high: Uint16Array;
  readonly #light: Uint8Array;
  /** Looked up, not divided: it is asked for every pixel. */
  readonly #columnOf: Int32Array;
  readonly #rowOf: Int32Array;

  /** Tiles of `tilePx` x `tilePx` over a picture; differences are seen over three of them, across and down. */
  constructor(widthPx: number, heightPx: number, tilePx: number) {
    this.#across = Math.ceil(widthPx / tilePx);
    this.#down = Math.ceil(heightPx / tilePx);
    const tiles = this.#across * this.#down;
    this.#low = new Uint16Array(tiles).fill(0xffff);
    this.#high = new Uint16Array(tiles);
    this.#light = new Uint8Array(tiles);
    this.#columnOf = Int32Array.from({ length: widthPx }, (_, x) => Math.floor(x / tilePx));
    this.#rowOf = Int32Array.from({ length: heightPx }, (_, y) => Math.floor(y / tilePx) * this.#across);
  }

  /** One pixel's value, in any unit. */
  add(x: number, y: number, value: number): void {
    const tile = this.#rowOf[y]! + this.#columnOf[x]!;
    if (value < this.#low[tile]!) this.#low[tile] = value;
    if (value > this.#high[tile]!) this.#high[tile] = value;
  }

  /** A pixel that is no shadow at all: what changes beside it is the edge of a black shape, not detail in a shadow. */
  addLight(x: number, y: number): void {
    this.#light[this.#rowOf[y]! + this.#columnOf[x]!] = 1;
  }

  /** True where values within the tile of this pixel or one that touches it differ by at least `step`. */
  findDetail(step: number): (x: number, y: number) => boolean {
    this.#forgetEdges();
    const across = this.#across;
    const detail = new Uint8Array(across * this.#down);
    for (let y = 0; y < this.#down; y++)
      for (let x = 0; x < across; x++) if (this.#rangeAround(x, y) >= step) detail[y * across + x] = 1;
    const [rowOf, columnOf] = [this.#rowOf, this.#columnOf];
    return (x, y) => detail[rowOf[y]! + columnOf[x]!] === 1;
  }

  #forgetEdges(): void {
    const [across, low, high] = [this.#across, this.#low, this.#high];
    for (let y = 0; y < this.#down; y++)
      for (let x = 0; x < across; x++)
        if (high[y * across + x]! >= low[y * across + x]! && this.#isAtEdge(x, y)) {
          low[y * across + x] = 0xffff;
          high[y * across + x] = 0;
        }
  }

  #isAtEdge(x: number, y: number): boolean {
    const [across, down, light] = [this.#across, this.#down, this.#light];
    for (let ny = Math.max(0, y - 1); ny <= Math.min(down - 1, y + 1); ny++)
      for (let nx = Math.max(0, x - 1); nx <= Math.min(across - 1, x + 1); nx++)
        if (light[ny * across + nx] === 1) return true;
    return false;
  }

  /** Below 0 where no value was told. */
  #rangeAround(x: number, y: number): number {
    const [across, down, low, high] = [this.#across, this.#down, this.#low, this.#high];
    let lowest = 0xffff;
    let highest = 0;
    for (let ny = Math.max(0, y - 1); ny <= Math.min(down - 1, y + 1); ny++)
      for (let nx = Math.max(0, x - 1); nx <= Math.min(across - 1, x + 1); nx++) {
        lowest = Math.min(lowest, low[ny * across + nx]!);
        highest = Math.max(highest, high[ny * across + nx]!);
      }
    return highest - lowest;
  }
}
