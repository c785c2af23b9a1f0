import type { SelfLikeness } from './self-likeness.ts';

/** A shift in cells: right and down. */
export type Shift = readonly [number, number];

/** Nearer ones are texture, weave or blocks (own choice, cells). */
export const LEAST_STEP = 16;
/** Peaks that are tried in pairs (own choice). */
const PEAKS = 12;
/** Peaks nearer to each other than this are one (cells). */
const APART = 5;

/** Shifts after which a picture is more like itself than after those around, the strongest first; one of each opposite pair. */
export function listPeaks(likeness: SelfLikeness): Shift[] {
  const { mostRight: right, mostDown: down, at } = likeness;
  const tops: { readonly shift: Shift; readonly value: number }[] = [];
  for (let y = 0; y <= down; y += 1)
    for (let x = y === 0 ? LEAST_STEP : -right; x <= right; x += 1)
      if (Math.hypot(x, y) >= LEAST_STEP && isTop(at, x, y)) tops.push({ shift: [x, y], value: at(x, y) });
  tops.sort((a, b) => b.value - a.value);
  const kept: Shift[] = [];
  for (const { shift } of tops) {
    if (kept.length === PEAKS) break;
    if (kept.every((other) => Math.hypot(shift[0] - other[0], shift[1] - other[1]) >= APART))
      kept.push(shift);
  }
  return kept;
}

function isTop(at: SelfLikeness['at'], x: number, y: number): boolean {
  const value = at(x, y);
  for (let dy = -1; dy <= 1; dy += 1)
    for (let dx = -1; dx <= 1; dx += 1) if (at(x + dx, y + dy) > value) return false;
  return true;
}
