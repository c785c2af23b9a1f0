import { cubicWeight } from './cubic-taps.ts';
import { channelsOf, createRaster, fullScaleOf, type Raster } from './raster.ts';

/** How an upright picture is bent into a ring sector that is even to left and right. Pixels; middles at .5. */
export interface Bend {
  readonly widthPx: number;
  readonly heightPx: number;
  /** Middle of the arcs on the bent picture. */
  readonly apexPx: { readonly x: number; readonly y: number };
  /** Radius of the arc that the middle row becomes, which keeps its length. */
  readonly middleRadiusPx: number;
  /** Where the middle of the arcs lies. */
  readonly opens: 'below' | 'above';
}

/**
 * The picture bent: its columns become rays, its rows arcs, the middle row keeps its length. Resampled by the cubic
 * kernel, weighted by alpha, as wide along the arc as the picture is squeezed there. A pixel whose middle lies beyond
 * the picture is clear; the result always has alpha. Beyond the picture's rim its border pixel is repeated.
 * @see R. Keys (1981) as findCubicTaps
 */
export function bendRaster(raster: Raster, bend: Bend): Raster {
  const bent = createRaster({ ...raster, widthPx: bend.widthPx, heightPx: bend.heightPx, hasAlpha: true });
  const { apexPx, middleRadiusPx, opens } = bend;
  const { widthPx, heightPx } = raster;
  const down = opens === 'below' ? -1 : 1;
  const channels = channelsOf(bent);
  const sample = makeSampler(raster, bent.data);
  for (let y = 0; y < bend.heightPx; y += 1) {
    const along = (y + 0.5 - apexPx.y) * down;
    for (let x = 0; x < bend.widthPx; x += 1) {
      const across = x + 0.5 - apexPx.x;
      const radius = Math.sqrt(across * across + along * along);
      const sourceY = heightPx / 2 + (radius - middleRadiusPx) * down;
      if (sourceY < 0 || sourceY >= heightPx) continue;
      const sourceX = widthPx / 2 + Math.atan2(across, along) * middleRadiusPx;
      if (sourceX < 0 || sourceX >= widthPx) continue;
      const squeeze = radius < middleRadiusPx ? middleRadiusPx / radius : 1;
      sample(sourceX - 0.5, sourceY - 0.5, squeeze, (y * bend.widthPx + x) * channels);
    }
  }
  return bent;
}

/** Steps of the tabulated kernel to a pixel: its slope is below 1.5, so a weight is off by under 0.0008. */
const STEPS = 1024;
const KERNEL = Float64Array.from({ length: 2 * STEPS + 2 }, (_, step) => cubicWeight((step + 0.5) / STEPS));
/** Beyond this the kernel is cut: such a squeeze is that of paper next to its apex. */
const MOST_TAPS = 64;

type Sample = (placeX: number, placeY: number, squeeze: number, at: number) => void;

/** Writes colour and alpha at a place between the middles of pixels into `into`, the kernel `squeeze` times as wide across. */
function makeSampler(raster: Raster, into: Raster['data']): Sample {
  const { widthPx, heightPx, hasAlpha } = raster;
  const colours = channelsOf({ ...raster, hasAlpha: false });
  const full = fullScaleOf(raster);
  const [firsts, lasts] = findVisibleSpans(raster);
  const across = new Float64Array(MOST_TAPS);
  const sums = new Float64Array(5);
  const mix = colours === 3 && hasAlpha ? mixRgba : mixAny;
  return (placeX, placeY, squeeze, at) => {
    const top = Math.floor(placeY) - 1;
    const half = squeeze < NO_SQUEEZE ? 2 : Math.min(Math.ceil(2 * squeeze), MOST_TAPS / 2);
    const left = Math.floor(placeX) - half + 1;
    const taps = 2 * half;
    if (isClear(firsts, lasts, left, left + taps, top, heightPx)) return;
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

/** True where no pixel of a stretch of four rows is visible. */
function isClear(
  firsts: Int32Array,
  lasts: Int32Array,
  left: number,
  right: number,
  top: number,
  heightPx: number,
): boolean {
  for (let tap = 0; tap < 4; tap += 1) {
    const row = Math.min(Math.max(top + tap, 0), heightPx - 1);
    // A border pixel that is repeated is seen from beyond the rim too.
    if (right > firsts[row]! && left <= lasts[row]!) return false;
  }
  return true;
}

/** First and last visible column of every row; first beyond last where none is. Those on the rim reach beyond it. */
function findVisibleSpans({ data, widthPx, heightPx, ...raster }: Raster): readonly [Int32Array, Int32Array] {
  const firsts = new Int32Array(heightPx).fill(raster.hasAlpha ? widthPx * 2 : -widthPx);
  const lasts = new Int32Array(heightPx).fill(raster.hasAlpha ? -widthPx : widthPx * 2);
  if (!raster.hasAlpha) return [firsts, lasts];
  const step = channelsOf(raster);
  for (let y = 0; y < heightPx; y += 1) {
    const row = y * widthPx * step + step - 1;
    let first = 0;
    while (first < widthPx && data[row + first * step] === 0) first += 1;
    if (first === widthPx) continue;
    let last = widthPx - 1;
    while (data[row + last * step] === 0) last -= 1;
    firsts[y] = first === 0 ? -widthPx : first;
    lasts[y] = last === widthPx - 1 ? widthPx * 2 : last;
  }
  return [firsts, lasts];
}
