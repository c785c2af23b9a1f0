import type { RectPx } from '../geometry/rectangle.ts';
import { findCubicTaps } from './cubic-taps.ts';
import { channelsOf, fullScaleOf, type Raster } from './raster.ts';

/** Sets the colour of pixel x, y of a resampled picture, whose samples begin at `pixel` of `data`. */
export type SetColour = (x: number, y: number, data: Raster['data'], pixel: number) => void;

/**
 * Sets the colour to the mean of the source's colours, weighted by the cubic kernel and by alpha. Alpha stays as it
 * is; meant for pixels of full alpha. Gray or rgb, with alpha.
 */
export function createColourMean(
  source: Raster,
  rectPx: RectPx,
  widthPx: number,
  heightPx: number,
): SetColour {
  const across = findCubicTaps(rectPx.width, widthPx);
  const down = findCubicTaps(rectPx.height, heightPx);
  const layout = layoutOf(source);
  const full = fullScaleOf(source);
  const clip = (value: number) => Math.min(Math.max(value + 0.5, 0), full);
  return (x, y, resampled, pixel) => {
    // Locals, since the engine reads what a function closes over anew for every tap.
    const { data, widthPx: rowPx } = source;
    const { channels, toGreen, toBlue, toAlpha } = layout;
    const { from: fromX, weights: weightsX } = across;
    let red = 0;
    let green = 0;
    let blue = 0;
    let alpha = 0;
    const endY = (y + 1) * down.count;
    const endX = (x + 1) * across.count;
    for (let tapY = y * down.count; tapY < endY; tapY++) {
      const weightY = down.weights[tapY]!;
      const row = (rectPx.y + down.from[tapY]!) * rowPx + rectPx.x;
      for (let tapX = x * across.count; tapX < endX; tapX++) {
        const at = (row + fromX[tapX]!) * channels;
        const weight = weightY * weightsX[tapX]! * data[at + toAlpha]!;
        red += weight * data[at]!;
        green += weight * data[at + toGreen]!;
        blue += weight * data[at + toBlue]!;
        alpha += weight;
      }
    }
    resampled[pixel] = clip(red / alpha);
    resampled[pixel + toGreen] = clip(green / alpha);
    resampled[pixel + toBlue] = clip(blue / alpha);
  };
}

/**
 * Holds the colour within the range of the visible source pixels that lie within one output pixel (enlarged: one
 * source pixel) of the same place. Where there are none, the pixel becomes clear. Gray or rgb, with alpha.
 */
export function createColourRange(
  source: Raster,
  rectPx: RectPx,
  widthPx: number,
  heightPx: number,
): SetColour {
  const across = findBeneath(rectPx.x, rectPx.width, widthPx);
  const down = findBeneath(rectPx.y, rectPx.height, heightPx);
  const layout = layoutOf(source);
  return (x, y, resampled, pixel) => {
    const { data, widthPx: rowPx } = source;
    const { channels, toGreen, toBlue, toAlpha } = layout;
    let lowRed = 65535;
    let lowGreen = 65535;
    let lowBlue = 65535;
    let highRed = -1;
    let highGreen = -1;
    let highBlue = -1;
    const endY = down.last[y]!;
    const endX = across.last[x]!;
    for (let row = down.first[y]!; row <= endY; row++)
      for (let column = across.first[x]!; column <= endX; column++) {
        const at = (row * rowPx + column) * channels;
        if (data[at + toAlpha] === 0) continue;
        lowRed = Math.min(lowRed, data[at]!);
        highRed = Math.max(highRed, data[at]!);
        lowGreen = Math.min(lowGreen, data[at + toGreen]!);
        highGreen = Math.max(highGreen, data[at + toGreen]!);
        lowBlue = Math.min(lowBlue, data[at + toBlue]!);
        highBlue = Math.max(highBlue, data[at + toBlue]!);
      }
    if (highRed < 0) {
      resampled.fill(0, pixel, pixel + channels);
      return;
    }
    resampled[pixel] = Math.min(Math.max(resampled[pixel]!, lowRed), highRed);
    resampled[pixel + toGreen] = Math.min(Math.max(resampled[pixel + toGreen]!, lowGreen), highGreen);
    resampled[pixel + toBlue] = Math.min(Math.max(resampled[pixel + toBlue]!, lowBlue), highBlue);
  };
}

/** Where the samples of a pixel stand. Gray has its one sample in all three places: it is set three times alike. */
function layoutOf(source: Raster) {
  const toGreen = source.model === 'rgb' ? 1 : 0;
  const channels = channelsOf(source);
  return { channels, toGreen, toBlue: 2 * toGreen, toAlpha: channels - 1 };
}

/** Along one axis: the first and last source pixel that bear on each output pixel. */
interface Beneath {
  readonly first: Int32Array;
  readonly last: Int32Array;
}

function findBeneath(start: number, sourcePx: number, outputPx: number): Beneath {
  const scale = sourcePx / outputPx;
  const near = Math.max(1, scale);
  const middles = Float64Array.from({ length: outputPx }, (_, output) => (output + 0.5) * scale - 0.5);
  return {
    first: Int32Array.from(middles, (middle) => start + Math.max(0, Math.ceil(middle - near))),
    last: Int32Array.from(middles, (middle) => start + Math.min(sourcePx - 1, Math.floor(middle + near))),
  };
}
