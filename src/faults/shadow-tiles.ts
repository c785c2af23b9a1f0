/** Tells where neighbouring pixels differ, by the lowest and highest value in tiles of a picture. */
export interface ShadowTiles {
  /** One pixel's value, in any unit. */
  add(x: number, y: number, value: number): void;
  /** A pixel that is no shadow at all: what changes beside it is the edge of a black shape, not detail in a shadow. */
  addLight(x: number, y: number): void;
  /** True where values within the tile of this pixel or one that touches it differ by at least `step`. */
  findDetail(step: number): (x: number, y: number) => boolean;
}

/** Tiles of `tilePx` x `tilePx` over a picture; differences are seen over three of them, across and down. */
export function makeShadowTiles(widthPx: number, heightPx: number, tilePx: number): ShadowTiles {
  const across = Math.ceil(widthPx / tilePx);
  const down = Math.ceil(heightPx / tilePx);
  const low = new Uint16Array(across * down).fill(0xffff);
  const high = new Uint16Array(across * down);
  const light = new Uint8Array(across * down);
  // Looked up, not divided: it is asked for every pixel.
  const columnOf = Int32Array.from({ length: widthPx }, (_, x) => Math.floor(x / tilePx));
  const rowOf = Int32Array.from({ length: heightPx }, (_, y) => Math.floor(y / tilePx) * across);
  const tileOf = (x: number, y: number) => rowOf[y]! + columnOf[x]!;
  return {
    add(x, y, value) {
      const tile = tileOf(x, y);
      if (value < low[tile]!) low[tile] = value;
      if (value > high[tile]!) high[tile] = value;
    },
    addLight(x, y) {
      light[tileOf(x, y)] = 1;
    },
    findDetail(step) {
      const isAtEdge = (x: number, y: number) => {
        for (let ny = Math.max(0, y - 1); ny <= Math.min(down - 1, y + 1); ny++)
          for (let nx = Math.max(0, x - 1); nx <= Math.min(across - 1, x + 1); nx++)
            if (light[ny * across + nx] === 1) return true;
        return false;
      };
      for (let y = 0; y < down; y++)
        for (let x = 0; x < across; x++)
          if (high[y * across + x]! >= low[y * across + x]! && isAtEdge(x, y)) {
            low[y * across + x] = 0xffff;
            high[y * across + x] = 0;
          }
      const detail = new Uint8Array(across * down);
      for (let y = 0; y < down; y++)
        for (let x = 0; x < across; x++) {
          let lowest = 0xffff;
          let highest = 0;
          for (let ny = Math.max(0, y - 1); ny <= Math.min(down - 1, y + 1); ny++)
            for (let nx = Math.max(0, x - 1); nx <= Math.min(across - 1, x + 1); nx++) {
              lowest = Math.min(lowest, low[ny * across + nx]!);
              highest = Math.max(highest, high[ny * across + nx]!);
            }
          if (highest - lowest >= step) detail[y * across + x] = 1;
        }
      return (x, y) => detail[tileOf(x, y)] === 1;
    },
  };
}
