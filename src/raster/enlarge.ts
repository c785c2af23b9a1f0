import { type CubicTaps, findCubicTaps } from './cubic-taps.ts';
import { channelsOf, createRaster, fullScaleOf, type Raster } from './raster.ts';

/**
 * The picture enlarged to a size not smaller than its own on either axis, by the cubic kernel, weighted by alpha.
 * Computed without clipping in between, so that flat areas keep their samples exactly.
 */
export function enlargeRaster(raster: Raster, widthPx: number, heightPx: number): Raster {
  const enlarged = createRaster({ ...raster, widthPx, heightPx });
  const acrossTaps = findCubicTaps(raster.widthPx, widthPx);
  const downTaps = findCubicTaps(raster.heightPx, heightPx);
  // Source rows enlarged across and premultiplied, by row number; only those that the next output row can need.
  const rows = new Map<number, Float32Array>();
  const near: Float32Array[] = [];
  const mixed = new Float32Array(widthPx * channelsOf(raster));
  for (let y = 0; y < heightPx; y++) {
    const tap = y * TAPS;
    for (const row of rows.keys()) if (row < downTaps.from[tap]!) rows.delete(row);
    for (let index = 0; index < TAPS; index++) {
      const from = downTaps.from[tap + index]!;
      const row = rows.get(from) ?? enlargeRow(premultiplyRow(raster, from), channelsOf(raster), acrossTaps);
      rows.set(from, row);
      near[index] = row;
    }
    mixRows(mixed, near, downTaps.weights, tap);
    writeRow(enlarged, y, mixed);
  }
  return enlarged;
}

/** Source pixels on each axis that an output pixel is made of, where the kernel is not widened. */
const TAPS = 4;

/** One row with its colour samples multiplied by alpha 0…1; alpha itself stays as it is. */
function premultiplyRow(raster: Raster, y: number): Float32Array {
  const channels = channelsOf(raster);
  const start = y * raster.widthPx * channels;
  const row = Float32Array.from(raster.data.subarray(start, start + raster.widthPx * channels));
  if (!raster.hasAlpha) return row;
  const full = fullScaleOf(raster);
  for (let pixel = 0; pixel < row.length; pixel += channels) {
    const alpha = row[pixel + channels - 1]! / full;
    for (let channel = 0; channel < channels - 1; channel++) row[pixel + channel]! *= alpha;
  }
  return row;
}

function enlargeRow(row: Float32Array, channels: number, { from, weights }: CubicTaps): Float32Array {
  const enlarged = new Float32Array((from.length / TAPS) * channels);
  for (let tap = 0, target = 0; tap < from.length; tap += TAPS)
    for (let channel = 0; channel < channels; channel++)
      enlarged[target++] =
        weights[tap]! * row[from[tap]! * channels + channel]! +
        weights[tap + 1]! * row[from[tap + 1]! * channels + channel]! +
        weights[tap + 2]! * row[from[tap + 2]! * channels + channel]! +
        weights[tap + 3]! * row[from[tap + 3]! * channels + channel]!;
  return enlarged;
}

function mixRows(
  mixed: Float32Array,
  rows: readonly Float32Array[],
  weights: Float64Array,
  tap: number,
): void {
  const a = rows[0]!;
  const b = rows[1]!;
  const c = rows[2]!;
  const d = rows[3]!;
  const weightA = weights[tap]!;
  const weightB = weights[tap + 1]!;
  const weightC = weights[tap + 2]!;
  const weightD = weights[tap + 3]!;
  for (let i = 0; i < mixed.length; i++)
    mixed[i] = a[i]! * weightA + b[i]! * weightB + c[i]! * weightC + d[i]! * weightD;
}

/** Rounds, with colour divided by alpha before it is clipped, so that it keeps its ratio. */
function writeRow(raster: Raster, y: number, mixed: Float32Array): void {
  const { data, hasAlpha } = raster;
  const channels = channelsOf(raster);
  const full = fullScaleOf(raster);
  const start = y * mixed.length;
  for (let pixel = 0; pixel < mixed.length; pixel += channels) {
    const alpha = hasAlpha ? mixed[pixel + channels - 1]! : full;
    // Less than half a step of alpha prints nothing; its colour would be a division by next to nothing.
    if (alpha < 0.5) continue;
    const share = full / alpha;
    for (let channel = 0; channel < channels; channel++) {
      const sample = mixed[pixel + channel]! * share + 0.5;
      data[start + pixel + channel] = Math.min(Math.max(sample, 0), full);
    }
    if (hasAlpha) data[start + pixel + channels - 1] = Math.min(alpha + 0.5, full);
  }
}
