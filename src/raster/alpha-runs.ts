import type { RectPx } from '../geometry/rectangle.ts';
import { RunList, type Runs } from './connected-areas.ts';
import { viewRgbaWords } from './pixel-units.ts';
import { channelsOf, type Raster } from './raster.ts';

/** Which pixels are marked: those of this alpha or more, or those of less than it, at the raster's own depth. */
export type AlphaLimit = { readonly from: number } | { readonly below: number };

/**
 * The runs of marked pixels within a box, their columns and rows counted from its corner. A picture without alpha is
 * opaque. No mask is made: of a large picture it would take a byte for each pixel.
 */
export function listAlphaRuns(raster: Raster, boxPx: RectPx, limit: AlphaLimit): Runs {
  const runs = new RunList();
  const marksHigh = 'from' in limit;
  const least = Math.ceil(marksHigh ? limit.from : limit.below);
  if (!raster.hasAlpha) {
    if (marksHigh) for (let y = 0; y < boxPx.height; y += 1) runs.add(y, 0, boxPx.width);
    return runs.list();
  }
  // Alpha is the highest byte of a word, so it can be compared in place.
  const words = viewRgbaWords(raster);
  const [units, step, unit] = words ? [words, 1, 0x1000000] : [raster.data, channelsOf(raster), 1];
  const [skip, take] = marksHigh ? [passLow, passHigh] : [passHigh, passLow];
  for (let y = 0; y < boxPx.height; y += 1) {
    const first = ((boxPx.y + y) * raster.widthPx + boxPx.x + 1) * step - 1;
    const end = first + boxPx.width * step;
    for (let at = first; ; ) {
      const start = skip(units, at, end, step, least * unit);
      if (start >= end) break;
      at = take(units, start, end, step, least * unit);
      runs.add(y, (start - first) / step, (at - first) / step);
    }
  }
  return runs.list();
}

type Units = Uint8Array | Uint16Array | Uint32Array;

/** Where the first unit from `at` on lies that is not below `least`; `end` or beyond where none does. */
function passLow(units: Units, at: number, end: number, step: number, least: number): number {
  let to = at;
  while (to < end && units[to]! < least) to += step;
  return to;
}

function passHigh(units: Units, at: number, end: number, step: number, least: number): number {
  let to = at;
  while (to < end && units[to]! >= least) to += step;
  return to;
}
