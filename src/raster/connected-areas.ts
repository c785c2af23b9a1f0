import type { RectPx } from '../geometry/rectangle.ts';

/** A region of marked pixels that hang together, also over corners (8-connected). */
export interface ConnectedArea {
  readonly pixels: number;
  readonly boxPx: RectPx;
}

/**
 * The connected regions of a mask (1 = marked; rows from the top, `widthPx` a row), largest first, then from the
 * top left. Works on runs, not on pixels: memory and time grow with the number of runs.
 * @see A. Rosenfeld and J. L. Pfaltz, "Sequential operations in digital picture processing", J. ACM 13 (1966).
 */
export function findConnectedAreas(mask: Uint8Array, widthPx: number): ConnectedArea[] {
  const runs = listRuns(mask, widthPx);
  const parent = Int32Array.from(runs, (_, i) => i);
  joinRows(runs, parent);
  const areas = new Map<
    number,
    { pixels: number; left: number; top: number; right: number; bottom: number }
  >();
  runs.forEach(({ y, from, to }, i) => {
    const root = rootOf(parent, i);
    const area = areas.get(root);
    if (area === undefined)
      areas.set(root, { pixels: to - from, left: from, top: y, right: to, bottom: y + 1 });
    else {
      area.pixels += to - from;
      area.left = Math.min(area.left, from);
      area.right = Math.max(area.right, to);
      area.bottom = y + 1;
    }
  });
  return [...areas.values()]
    .map(({ pixels, left, top, right, bottom }) => ({
      pixels,
      boxPx: { x: left, y: top, width: right - left, height: bottom - top },
    }))
    .sort((a, b) => b.pixels - a.pixels || a.boxPx.y - b.boxPx.y || a.boxPx.x - b.boxPx.x);
}

/** Marked pixels `from` to before `to` of row y. */
interface Run {
  readonly y: number;
  readonly from: number;
  readonly to: number;
}

function listRuns(mask: Uint8Array, widthPx: number): Run[] {
  const runs: Run[] = [];
  for (let row = 0, y = 0; row < mask.length; row += widthPx, y += 1) {
    const end = row + widthPx;
    for (let at = mask.indexOf(1, row); at !== -1 && at < end; ) {
      let to = at + 1;
      while (to < end && mask[to] === 1) to += 1;
      runs.push({ y, from: at - row, to: to - row });
      at = mask.indexOf(1, to);
    }
  }
  return runs;
}

/** Joins each run with those of the row above that it touches, corners included. */
function joinRows(runs: readonly Run[], parent: Int32Array): void {
  let above = 0;
  for (let i = 0; i < runs.length; i += 1) {
    const run = runs[i]!;
    while (runs[above]!.y < run.y - 1 || (runs[above]!.y === run.y - 1 && runs[above]!.to < run.from))
      above += 1;
    for (let j = above; runs[j]!.y === run.y - 1 && runs[j]!.from <= run.to; j += 1) join(parent, i, j);
  }
}

function join(parent: Int32Array, a: number, b: number): void {
  const rootA = rootOf(parent, a);
  const rootB = rootOf(parent, b);
  if (rootA < rootB) parent[rootB] = rootA;
  else parent[rootA] = rootB;
}

function rootOf(parent: Int32Array, i: number): number {
  let root = i;
  while (parent[root] !== root) root = parent[root]!;
  for (let at = i; parent[at] !== root; ) {
    const next = parent[at]!;
    parent[at] = root;
    at = next;
  }
  return root;
}
