import { fullScaleOf, type Raster } from '../raster/raster.ts';

/** Rows of the print-ready picture as they are printed, seen from the front, over white paper. */
export interface PrintRows {
  readonly depth: 8 | 16;
  /** Writes three samples a pixel, of that depth, into `row`: row `y` from pixel `x` on. What lies beside the picture repeats its rim. */
  read(x: number, y: number, row: Uint8Array | Uint16Array): void;
}

/** Of an rgb picture with or without alpha; `mirrored` undoes the reversal that printing asks for. */
export function readPrintRows(raster: Raster, mirrored: boolean): PrintRows {
  const { widthPx, heightPx, hasAlpha, depth, data } = raster;
  const full = fullScaleOf(raster);
  const channels = hasAlpha ? 4 : 3;
  return {
    depth,
    read(x, y, row) {
      const start = clamp(y, heightPx) * widthPx;
      for (let to = 0, at = x; to < row.length; to += 3, at += 1) {
        const column = clamp(at, widthPx);
        const from = (start + (mirrored ? widthPx - 1 - column : column)) * channels;
        const alpha = hasAlpha ? data[from + 3]! : full;
        const clear = (full - alpha) * full;
        row[to] = Math.round((data[from]! * alpha + clear) / full);
        row[to + 1] = Math.round((data[from + 1]! * alpha + clear) / full);
        row[to + 2] = Math.round((data[from + 2]! * alpha + clear) / full);
      }
    },
  };
}

function clamp(at: number, size: number): number {
  return Math.min(size - 1, Math.max(0, at));
}
