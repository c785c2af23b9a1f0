import { channelsOf, createRaster, fullScaleOf, type Raster } from './raster.ts';

/**
 * The picture enlarged to a size not smaller than its own on either axis, by the cubic convolution kernel with
 * a = -1/2, weighted by alpha; border pixels are repeated outward. Pixel middles map to their true places:
 * output middle x + 1/2 shows source point (x + 1/2) * source / output. Flat areas keep their samples exactly.
 * The raster itself at its own size.
 * @see R. Keys, "Cubic Convolution Interpolation for Digital Image Processing", IEEE Trans. ASSP 29 (1981), eq. 15
 */
export function enlargeRaster(raster: Raster, widthPx: number, heightPx: number): Raster {
  if (widthPx === raster.widthPx && heightPx === raster.heightPx) return raster;
  const enlarged = createRaster({ ...raster, widthPx, heightPx });
  const acrossTaps = findTaps(raster.widthPx, widthPx);
  const downTaps = findTaps(raster.heightPx, heightPx);
  // Source rows enlarged across and premultiplied, by row number; only those that the next output row can need.
  const rows = new Map<number, Float32Array>();
  const rowAt = (y: number): Float32Array => {
    const row = rows.get(y) ?? enlargeRow(premultiplyRow(raster, y), channelsOf(raster), acrossTaps);
    rows.set(y, row);
    return row;
  };
  const mixed = new Float32Array(widthPx * channelsOf(raster));
  for (let y = 0; y < heightPx; y++) {
    const tap = y * TAPS;
    for (const row of rows.keys()) if (row < downTaps.from[tap]!) rows.delete(row);
    const near = Array.from({ length: TAPS }, (_, index) => rowAt(downTaps.from[tap + index]!));
    mixRows(mixed, near, downTaps.weights, tap);
    writeRow(enlarged, y, mixed);
  }
  return enlarged;
}

/** Source pixels that an output pixel is made of. */
const TAPS = 4;

/** For every output pixel of an axis four source pixels, each within the source, and their weights (sum 1). */
interface Taps {
  readonly from: Int32Array;
  readonly weights: Float64Array;
}

function findTaps(sourcePx: number, outputPx: number): Taps {
  const taps = { from: new Int32Array(outputPx * TAPS), weights: new Float64Array(outputPx * TAPS) };
  for (let output = 0; output < outputPx; output++) {
    const place = ((output + 0.5) * sourcePx) / outputPx - 0.5;
    const first = Math.floor(place) - 1;
    for (let tap = 0; tap < TAPS; tap++) {
      taps.from[output * TAPS + tap] = Math.min(Math.max(first + tap, 0), sourcePx - 1);
      taps.weights[output * TAPS + tap] = cubicWeight(Math.abs(place - first - tap));
    }
  }
  return taps;
}

/** Keys' kernel at a distance of 0…2 pixels. */
function cubicWeight(distance: number): number {
  return distance < 1
    ? 1.5 * distance ** 3 - 2.5 * distance ** 2 + 1
    : -0.5 * distance ** 3 + 2.5 * distance ** 2 - 4 * distance + 2;
}

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

function enlargeRow(row: Float32Array, channels: number, { from, weights }: Taps): Float32Array {
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
