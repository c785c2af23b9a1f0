import type { RectPx } from '../geometry/rectangle.ts';
import { visitEdgeRows } from './edge-rows.ts';
import { channelsOf, type Raster } from './raster.ts';

/** How far a cubic kernel reaches, in pixels of the coarser of source and output. */
const KERNEL_REACH = 2;

/**
 * Holds the colours of a resampled picture, wherever alpha is less than full within the kernel's reach, to the
 * range of the visible source pixels within one output pixel (enlarged: one source pixel) of the same place.
 * Changes and returns `resampled`, which was made from the rectangle of `source`. Alpha stays as it is, save that
 * a pixel with no visible source pixel so near becomes clear.
 *
 * Why: a kernel that sharpens overshoots at the edge of the art. Clipped each by itself, premultiplied colour and
 * alpha lose their ratio, which draws a line along the edge in a colour that the art does not hold; and low alpha
 * leaves few steps of colour. Held to their range, flat colours stay exact and no edge can have a halo.
 */
export function keepEdgeColours(resampled: Raster, source: Raster, rectPx: RectPx): Raster {
  const { data, widthPx, heightPx } = resampled;
  const channels = channelsOf(resampled);
  const across = findBeneath(rectPx.x, rectPx.width, widthPx);
  const down = findBeneath(rectPx.y, rectPx.height, heightPx);
  const range = { lowest: new Uint16Array(channels - 1), highest: new Uint16Array(channels - 1) };
  visitEdgeRows(resampled, across.reach, down.reach, (y, nearEdge) => {
    for (let x = 0, pixel = y * widthPx * channels; x < widthPx; x++, pixel += channels) {
      if (nearEdge[x] === 0 || data[pixel + channels - 1] === 0) continue;
      if (!measureRange(source, across, x, down, y, range)) data.fill(0, pixel, pixel + channels);
      for (let channel = 0; channel < channels - 1; channel++) {
        const sample = data[pixel + channel]!;
        if (sample < range.lowest[channel]!) data[pixel + channel] = range.lowest[channel]!;
        else if (sample > range.highest[channel]!) data[pixel + channel] = range.highest[channel]!;
      }
    }
  });
  return resampled;
}

/** Along one axis: the first and last source pixel that bear on each output pixel, and the kernel's reach in output pixels. */
interface Beneath {
  readonly first: Int32Array;
  readonly last: Int32Array;
  readonly reach: number;
}

function findBeneath(start: number, sourcePx: number, outputPx: number): Beneath {
  const scale = sourcePx / outputPx;
  const near = Math.max(1, scale);
  const middles = Float64Array.from({ length: outputPx }, (_, output) => (output + 0.5) * scale - 0.5);
  return {
    first: Int32Array.from(middles, (middle) => start + Math.max(0, Math.ceil(middle - near))),
    last: Int32Array.from(middles, (middle) => start + Math.min(sourcePx - 1, Math.floor(middle + near))),
    reach: Math.ceil(KERNEL_REACH * Math.max(1, 1 / scale)),
  };
}

interface ColourRange {
  readonly lowest: Uint16Array;
  readonly highest: Uint16Array;
}

/** Fills `range` from the visible source pixels beneath an output pixel; false (and an empty range of 0) when there are none. */
function measureRange(
  source: Raster,
  across: Beneath,
  x: number,
  down: Beneath,
  y: number,
  range: ColourRange,
): boolean {
  const { data, widthPx } = source;
  const channels = channelsOf(source);
  const { lowest, highest } = range;
  lowest.fill(65535);
  highest.fill(0);
  let visible = false;
  for (let row = down.first[y]!; row <= down.last[y]!; row++)
    for (let column = across.first[x]!; column <= across.last[x]!; column++) {
      const pixel = (row * widthPx + column) * channels;
      if (data[pixel + channels - 1] === 0) continue;
      visible = true;
      for (let channel = 0; channel < channels - 1; channel++) {
        const sample = data[pixel + channel]!;
        if (sample < lowest[channel]!) lowest[channel] = sample;
        if (sample > highest[channel]!) highest[channel] = sample;
      }
    }
  if (!visible) lowest.fill(0);
  return visible;
}
