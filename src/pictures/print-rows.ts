import { roundOver255 } from '../raster/flatten.ts';
import type { Raster } from '../raster/raster.ts';

/** Rows of the print-ready picture as they are printed, seen from the front, over white paper. */
export interface PrintRows {
  /** Writes three samples a pixel into `row`: row `y` from pixel `x` on. What lies beside the picture repeats its rim. */
  read(x: number, y: number, row: Uint8Array): void;
}

/** Of an 8-bit rgb picture with or without alpha; `mirrored` undoes the reversal that printing asks for. */
export function readPrintRows({ widthPx, heightPx, hasAlpha, data }: Raster, mirrored: boolean): PrintRows {
  const channels = hasAlpha ? 4 : 3;
  return {
    read(x, y, row) {
      const start = clamp(y, heightPx) * widthPx;
      for (let to = 0, at = x; to < row.length; to += 3, at += 1) {
        const column = clamp(at, widthPx);
        const from = (start + (mirrored ? widthPx - 1 - column : column)) * channels;
        const alpha = hasAlpha ? data[from + 3]! : 255;
        const clear = (255 - alpha) * 255;
        row[to] = roundOver255(data[from]! * alpha + clear);
        row[to + 1] = roundOver255(data[from + 1]! * alpha + clear);
        row[to + 2] = roundOver255(data[from + 2]! * alpha + clear);
      }
    },
  };
}

function clamp(at: number, size: number): number {
  return Math.min(size - 1, Math.max(0, at));
}
