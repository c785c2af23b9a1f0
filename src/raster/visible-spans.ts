import { channelsOf, type Raster } from './raster.ts';

/** First and last visible column of every row; first beyond last where none is. Those on the rim reach beyond it. */
export interface VisibleSpans {
  readonly firsts: Int32Array;
  readonly lasts: Int32Array;
}

export function findVisibleSpans({ data, widthPx, heightPx, ...raster }: Raster): VisibleSpans {
  const firsts = new Int32Array(heightPx).fill(raster.hasAlpha ? widthPx * 2 : -widthPx);
  const lasts = new Int32Array(heightPx).fill(raster.hasAlpha ? -widthPx : widthPx * 2);
  if (!raster.hasAlpha) return { firsts, lasts };
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
  return { firsts, lasts };
}

/** True where no pixel from `left` to before `right`, in four rows from `top` on, is visible. */
export function isClear({ firsts, lasts }: VisibleSpans, left: number, right: number, top: number): boolean {
  const lowest = firsts.length - 1;
  for (let tap = 0; tap < 4; tap += 1) {
    const row = Math.min(Math.max(top + tap, 0), lowest);
    // A border pixel that is repeated is seen from beyond the rim too.
    if (right > firsts[row]! && left <= lasts[row]!) return false;
  }
  return true;
}
