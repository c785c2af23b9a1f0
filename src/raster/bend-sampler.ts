import { cubicWeight } from './cubic-taps.ts';
import { channelsOf, fullScaleOf, type Raster } from './raster.ts';
import { findVisibleSpans, isClear } from './visible-spans.ts';

/** Steps of the tabulated kernel to a pixel: its slope is below 1.5, so a weight is off by under 0.0008. */
const STEPS = 1024;
const KERNEL = Float64Array.from({ length: 2 * STEPS + 2 }, (_, step) => cubicWeight((step + 0.5) / STEPS));
/** Beyond this the kernel is cut: such a squeeze is that of paper next to its apex. */
const MOST_TAPS = 64;

type Sample = (placeX: number, placeY: number, squeeze: number, at: number) => void;

/** Writes colour and alpha at a place between the middles of pixels into `into`, the kernel `squeeze` times as wide across. */
export function makeBendSampler(raster: Raster, into: Raster['data']): Sample {
  const { widthPx, heightPx, hasAlpha } = raster;
  const colours = channelsOf({ ...raster, hasAlpha: false });
  const full = fullScaleOf(raster);
  const spans = findVisibleSpans(raster);
  const across = new Float64Array(MOST_TAPS);
  const sums = new Float64Array(5);
  const mix = colours === 3 && hasAlpha ? mixRgba : mixAny;
  return (placeX, placeY, squeeze, at) => {
    const top = Math.floor(placeY) - 1;
    const half = squeeze < NO_SQUEEZE ? 2 : Math.min(Math.ceil(2 * squeeze), MOST_TAPS / 2);
    const left = Math.floor(placeX) - half + 1;
    const taps = 2 * half;
    if (isClear(spans, left, left + taps, top)) return;
    const perTap = squeeze < NO_SQUEEZE ? STEPS : STEPS / squeeze;
    let sumAcross = 0;
    for (let tap = 0; tap < taps; tap += 1) {
      const distance = Math.abs(placeX - left - tap) * perTap;
      sumAcross += across[tap] = distance < 2 * STEPS ? KERNEL[distance | 0]! : 0;
    }
    const inside = left >= 0 && left + taps <= widthPx && top >= 0 && top + 4 <= heightPx;
    (inside ? mix : mixAny)(raster, colours, left, top, taps, placeY, across, sums);
    // Less than half a step of alpha prints nothing; its colour would be a division by next to nothing. Weights down add up to 1.
    const alpha = sums[4]! / sumAcross;
    if (alpha < 0.5) return;
    for (let channel = 0; channel < colours; channel += 1) {
      const value = sums[channel]! / sums[4]! + 0.5;
      into[at + channel] = Math.max(0, Math.min(full, value));
    }
    into[at + colours] = Math.min(full, alpha + 0.5);
  };
}

/**
 * Up to here the kernel is not widened, which would cost half as much again: what lies above 1 / 1.1 of the picture's
 * finest detail has been left out of it by the kernel that brought it to its size.
 */
const NO_SQUEEZE = 1.1;

/** Sums of colours times alpha, and last of alpha, over four rows of `taps` pixels. */
type Mix = (
  raster: Raster,
  colours: number,
  left: number,
  top: number,
  taps: number,
  placeY: number,
  across: Float64Array,
  sums: Float64Array,
) => void;

/** The usual case, wholly within the picture. */
const mixRgba: Mix = ({ data, widthPx }, _, left, top, taps, placeY, across, sums) => {
  let red = 0;
  let green = 0;
  let blue = 0;
  let alphas = 0;
  for (let row = 0; row < 4; row += 1) {
    const down = KERNEL[(Math.abs(placeY - top - row) * STEPS) | 0]!;
    let source = ((top + row) * widthPx + left) * 4;
    for (let tap = 0; tap < taps; tap += 1, source += 4) {
      const share = down * across[tap]! * data[source + 3]!;
      red += share * data[source]!;
      green += share * data[source + 1]!;
      blue += share * data[source + 2]!;
      alphas += share;
    }
  }
  sums[0] = red;
  sums[1] = green;
  sums[2] = blue;
  sums[4] = alphas;
};

/** Any model, at the rim too. */
const mixAny: Mix = (raster, colours, left, top, taps, placeY, across, sums) => {
  const { data, widthPx, heightPx, hasAlpha } = raster;
  const step = hasAlpha ? colours + 1 : colours;
  const full = fullScaleOf(raster);
  sums.fill(0);
  for (let row = 0; row < 4; row += 1) {
    const down = KERNEL[(Math.abs(placeY - top - row) * STEPS) | 0]!;
    const start = Math.min(Math.max(top + row, 0), heightPx - 1) * widthPx;
    for (let tap = 0; tap < taps; tap += 1) {
      const source = (start + Math.min(Math.max(left + tap, 0), widthPx - 1)) * step;
      const share = down * across[tap]! * (hasAlpha ? data[source + colours]! : full);
      for (let channel = 0; channel < colours; channel += 1)
        sums[channel]! += share * data[source + channel]!;
      sums[4]! += share;
    }
  }
};
