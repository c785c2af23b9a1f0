/**
 * The picture of the orientation tests: 3 x 2 pixels that can be told apart, as displayed.
 * `a b c` over `d e f`, each an RGB colour that survives every format here without loss.
 */
const LABELS: Readonly<Record<string, readonly [number, number, number]>> = {
  a: [255, 0, 0],
  b: [0, 255, 0],
  c: [0, 0, 255],
  d: [255, 255, 0],
  e: [0, 255, 255],
  f: [255, 255, 255],
};

/**
 * How the picture as displayed must be stored for each orientation value, row by row: the value names where the
 * first stored row and column lie as displayed (CIPA DC-008, tag 0x0112).
 */
export const STORED: Readonly<Record<number, readonly string[]>> = {
  1: ['abc', 'def'], // row 0 top, column 0 left
  2: ['cba', 'fed'], // top, right
  3: ['fed', 'cba'], // bottom, right
  4: ['def', 'abc'], // bottom, left
  5: ['ad', 'be', 'cf'], // left, top
  6: ['cf', 'be', 'ad'], // right, top
  7: ['fc', 'eb', 'da'], // right, bottom
  8: ['da', 'eb', 'fc'], // left, bottom
};

export const DISPLAYED = ['abc', 'def'];

/** Samples of these rows, RGB, each pixel `scale` x `scale` large. */
export function paintRows(
  rows: readonly string[],
  scale = 1,
): { widthPx: number; heightPx: number; samples: number[] } {
  const samples = rows.flatMap((row) =>
    Array.from({ length: scale }, () =>
      [...row].flatMap((label) => Array.from({ length: scale }, () => [...LABELS[label]!]).flat()),
    ).flat(),
  );
  return { widthPx: rows[0]!.length * scale, heightPx: rows.length * scale, samples };
}

/** The label of the nearest colour in the middle of each `scale` x `scale` block, row by row. */
export function readLabels(
  raster: { widthPx: number; heightPx: number; data: ArrayLike<number> },
  channels: number,
  scale = 1,
): string[] {
  const nearest = (x: number, y: number) => {
    const at = (y * raster.widthPx + x) * channels;
    const distance = (label: string) =>
      LABELS[label]!.reduce((sum, value, index) => sum + Math.abs(value - raster.data[at + index]!), 0);
    return Object.keys(LABELS).reduce((best, label) => (distance(label) < distance(best) ? label : best));
  };
  const middle = scale >> 1;
  return Array.from({ length: raster.heightPx / scale }, (_, y) =>
    Array.from({ length: raster.widthPx / scale }, (_, x) =>
      nearest(x * scale + middle, y * scale + middle),
    ).join(''),
  );
}
