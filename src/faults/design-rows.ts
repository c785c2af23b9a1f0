import type { VisibleParts } from './visible-parts.ts';

/** Runs of the design, row by row: those of row y are first[y] to before first[y + 1]. */
export interface DesignRows {
  readonly first: Int32Array;
  readonly from: Int32Array;
  readonly to: Int32Array;
}

export function listDesignRows(
  { runs, partOfRun }: VisibleParts,
  small: Uint8Array,
  heightPx: number,
): DesignRows {
  const first = new Int32Array(heightPx + 1);
  for (let i = 0; i < runs.count; i += 1) if (small[partOfRun[i]!] === 0) first[runs.y[i]! + 1]! += 1;
  for (let y = 0; y < heightPx; y += 1) first[y + 1]! += first[y]!;
  const from = new Int32Array(first[heightPx]!);
  const to = new Int32Array(first[heightPx]!);
  let at = 0;
  for (let i = 0; i < runs.count; i += 1) {
    if (small[partOfRun[i]!] === 1) continue;
    from[at] = runs.from[i]!;
    to[at] = runs.to[i]!;
    at += 1;
  }
  return { first, from, to };
}

export function isNear(parts: VisibleParts, part: number, design: DesignRows, distancePx: number): boolean {
  const [top, bottom] = [parts.top[part]!, parts.bottom[part]!];
  const lowest = Math.min(design.first.length - 2, Math.ceil(bottom - 1 + distancePx));
  for (let y = Math.max(0, Math.floor(top - distancePx)); y <= lowest; y += 1) {
    // Rows between a speck and the design: touching rows have none.
    const rows = y < top ? top - y - 1 : Math.max(0, y - bottom);
    if (rows >= distancePx) continue;
    const reach = Math.sqrt(distancePx ** 2 - rows ** 2);
    if (hasRun(design, y, parts.left[part]! - reach, parts.right[part]! + reach)) return true;
  }
  return false;
}

/** Whether a run of row y lies within the open interval. */
function hasRun({ first, from, to }: DesignRows, y: number, left: number, right: number): boolean {
  let low = first[y]!;
  let high = first[y + 1]!;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (to[middle]! <= left) low = middle + 1;
    else high = middle;
  }
  return low < first[y + 1]! && from[low]! < right;
}
