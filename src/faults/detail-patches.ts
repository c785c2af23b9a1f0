import type { LumaLines } from '../raster/luma-lines.ts';
import { PATCH_PX } from './sampling.ts';

/**
 * The patch of `PATCH_PX` pixels richest in curvature of each line, less its mean, of the richest `most` lines. Patches that touch
 * black or white, or are not opaque, are none. Fewer, or an empty list, where there is not as much.
 */
export function findDetailPatches({ length, values, whole }: LumaLines, most: number): Float64Array[] {
  const found: { patch: Float64Array; detail: number }[] = [];
  for (const [i, line] of values.entries()) {
    let best = { from: -1, detail: 0 };
    for (let from = 0; from + PATCH_PX <= length; from += PATCH_PX / 2) {
      const detail = detailOf(line, whole[i]!, from);
      if (detail > best.detail) best = { from, detail };
    }
    if (best.from >= 0) found.push({ patch: withoutMean(line, best.from), detail: best.detail });
  }
  found.sort((a, b) => b.detail - a.detail);
  return found.slice(0, most).map(({ patch }) => patch);
}

function detailOf(line: Float32Array, whole: Uint8Array, from: number): number {
  let detail = 0;
  for (let i = from; i < from + PATCH_PX; i += 1) {
    const value = line[i]!;
    if (whole[i] === 0) return 0;
    if (i < from + PATCH_PX - 2) detail += Math.abs(value - 2 * line[i + 1]! + line[i + 2]!);
  }
  return detail;
}

function withoutMean(line: Float32Array, from: number): Float64Array {
  const patch = Float64Array.from(line.subarray(from, from + PATCH_PX));
  let sum = 0;
  for (const value of patch) sum += value;
  const mean = sum / PATCH_PX;
  for (let i = 0; i < PATCH_PX; i += 1) patch[i]! -= mean;
  return patch;
}
