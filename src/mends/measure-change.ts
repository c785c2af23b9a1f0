import { measureDeltaE2000 } from '../colour/delta-e-2000.ts';
import { xyzToLabD50 } from '../colour/lab.ts';
import { makeForwardStages } from '../icc/forward-stages.ts';
import { makeLinkStages } from '../icc/link-stages.ts';
import type { IccProfile } from '../icc/profile.ts';
import { STAGE_CHANNELS } from '../icc/stage.ts';
import { channelsOf, fullScaleOf, type Raster } from '../raster/raster.ts';

/** What a mend changed. */
export interface Change {
  readonly pixels: number;
  /** dE00 between a pixel before and after, over white; 0 where only what alpha hides changed. */
  readonly largestDeltaE00: number;
  /** 0…255, at any depth: 255 where an opaque pixel became clear. */
  readonly largestAlpha: number;
}

/** Colours before are told apart to so many bits a sample; of those alike, the pixel that moved farthest is measured. */
const BITS = 5;

/** Compares two rasters of one size, depth and model, both in the colours of `source`. */
export function measureChange(before: Raster, after: Raster, source: IccProfile): Change {
  const channels = channelsOf(before);
  const full = fullScaleOf(before);
  const farthest = new Float64Array(2 ** (3 * BITS));
  const witness = new Uint32Array(farthest.length);
  const [a, b] = [before.data, after.data];
  const shift = (before.depth === 8 ? 8 : 16) - BITS;
  const colours = before.hasAlpha ? channels - 1 : channels;
  let pixels = 0;
  let largestAlpha = 0;
  for (let at = 0, pixel = 0; at < a.length; at += channels, pixel++) {
    let same = true;
    for (let k = 0; k < channels; k++) if (a[at + k] !== b[at + k]) same = false;
    if (same) continue;
    pixels += 1;
    const alphaBefore = before.hasAlpha ? a[at + colours]! : full;
    const alphaAfter = before.hasAlpha ? b[at + colours]! : full;
    largestAlpha = Math.max(largestAlpha, Math.abs(alphaBefore - alphaAfter));
    let moved = 0;
    let bin = 0;
    for (let k = 0; k < 3; k++) {
      const from = at + Math.min(k, colours - 1);
      const printed = overWhite(a[from]!, alphaBefore, full);
      moved += (printed - overWhite(b[from]!, alphaAfter, full)) ** 2;
      bin = (bin << BITS) | (printed >> shift);
    }
    if (moved <= farthest[bin]!) continue;
    farthest[bin] = moved;
    witness[bin] = pixel;
  }
  const toLab = makeLab(source);
  let largestDeltaE00 = 0;
  for (let bin = 0; bin < farthest.length; bin++) {
    if (farthest[bin] === 0) continue;
    const [one, other] = [before, after].map((raster) => toLab(printedAt(raster, witness[bin]!)));
    largestDeltaE00 = Math.max(
      largestDeltaE00,
      measureDeltaE2000(one![0], one![1], one![2], other![0], other![1], other![2]),
    );
  }
  return { pixels, largestDeltaE00, largestAlpha: largestAlpha / (full / 255) };
}

function overWhite(sample: number, alpha: number, full: number): number {
  return alpha === full ? sample : Math.round((sample * alpha + (full - alpha) * full) / full);
}

/** 0…1 each; gray three times. */
function printedAt(raster: Raster, pixel: number): readonly number[] {
  const channels = channelsOf(raster);
  const full = fullScaleOf(raster);
  const colours = raster.hasAlpha ? channels - 1 : channels;
  const at = pixel * channels;
  const alpha = raster.hasAlpha ? raster.data[at + colours]! : full;
  return [0, 1, 2].map((k) => overWhite(raster.data[at + Math.min(k, colours - 1)]!, alpha, full) / full);
}

function makeLab(source: IccProfile) {
  const stages = [
    ...makeForwardStages(source, 'relative'),
    ...makeLinkStages(source.connection, 'xyz', null),
  ];
  const values = new Float64Array(STAGE_CHANNELS);
  return (device: readonly number[]) => {
    values.set(device);
    for (const stage of stages) stage(values);
    return xyzToLabD50([values[0]!, values[1]!, values[2]!]);
  };
}
