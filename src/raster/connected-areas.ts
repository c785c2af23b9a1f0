import type { RectPx } from '../geometry/rectangle.ts';

/** A region of marked pixels that hang together, also over corners (8-connected). */
export interface ConnectedArea {
  readonly pixels: number;
  readonly boxPx: RectPx;
}

/**
 * The connected regions of at least `leastPixels` in a mask (1 = marked; rows from the top, `widthPx` a row),
 * largest first, then from the top left. Works on runs, not on pixels, and in numbers, not in objects: memory and
 * time grow with the number of runs, of which a grainy picture has very many.
 * @see A. Rosenfeld and J. L. Pfaltz, "Sequential operations in digital picture processing", J. ACM 13 (1966).
 */
export function findConnectedAreas(mask: Uint8Array, widthPx: number, leastPixels = 1): ConnectedArea[] {
  const regions = sumUp(listRuns(mask, widthPx));
  const areas: ConnectedArea[] = [];
  for (let root = 0; root < regions.count; root += 1)
    if (regions.pixels[root]! >= leastPixels) areas.push(areaAt(regions, root));
  return areas.sort(bySize);
}

function bySize(a: ConnectedArea, b: ConnectedArea): number {
  return b.pixels - a.pixels || a.boxPx.y - b.boxPx.y || a.boxPx.x - b.boxPx.x;
}

/** The largest of them, the topmost where several are; null where nothing is marked. */
export function findLargestArea(mask: Uint8Array, widthPx: number): ConnectedArea | null {
  const regions = sumUp(listRuns(mask, widthPx));
  let largest = -1;
  for (let root = 0; root < regions.count; root += 1)
    if (regions.pixels[root]! > (regions.pixels[largest] ?? 0)) largest = root;
  return largest < 0 ? null : areaAt(regions, largest);
}

/** The runs of marked pixels of a mask: run i holds the pixels from[i] to before to[i] of row y[i]; rows and runs in order. */
export interface Runs {
  readonly count: number;
  readonly y: Int32Array;
  readonly from: Int32Array;
  readonly to: Int32Array;
}

/** All runs of 1 in a mask, rows from the top, `widthPx` a row. */
export function listRuns(mask: Uint8Array, widthPx: number): Runs {
  const runs = new RunList();
  for (let from = 0, y = 0; from < mask.length; from += widthPx, y += 1) {
    const line = mask.subarray(from, from + widthPx);
    for (let start = line.indexOf(1); start !== -1; ) {
      const zero = line.indexOf(0, start);
      const end = zero === -1 ? line.length : zero;
      runs.add(y, start, end);
      start = line.indexOf(1, end);
    }
  }
  return runs.list();
}

/** Runs that are found one after the other: rows from the top, each from the left. */
export class RunList {
  #y = new Int32Array(1024);
  #from = new Int32Array(1024);
  #to = new Int32Array(1024);
  #count = 0;

  add(y: number, from: number, to: number): void {
    if (this.#count === this.#y.length) {
      this.#y = grow(this.#y);
      this.#from = grow(this.#from);
      this.#to = grow(this.#to);
    }
    this.#y[this.#count] = y;
    this.#from[this.#count] = from;
    this.#to[this.#count] = to;
    this.#count += 1;
  }

  list(): Runs {
    const count = this.#count;
    return {
      count,
      y: this.#y.slice(0, count),
      from: this.#from.slice(0, count),
      to: this.#to.slice(0, count),
    };
  }
}

function grow(list: Int32Array<ArrayBuffer>): Int32Array<ArrayBuffer> {
  const larger = new Int32Array(2 * list.length);
  larger.set(list);
  return larger;
}

/** For each run another of its region, down to the first one, which is its own: each run joined with those above it. */
export function joinRuns({ count, y, from, to }: Runs): Int32Array {
  const parent = new Int32Array(count);
  for (let i = 0; i < count; i += 1) parent[i] = i;
  let above = 0;
  for (let i = 0; i < count; i += 1) {
    const row = y[i]! - 1;
    while (y[above]! < row || (y[above] === row && to[above]! < from[i]!)) above += 1;
    for (let j = above; y[j] === row && from[j]! <= to[i]!; j += 1) join(parent, i, j);
  }
  return parent;
}

function join(parent: Int32Array, a: number, b: number): void {
  const rootA = rootOf(parent, a);
  const rootB = rootOf(parent, b);
  if (rootA < rootB) parent[rootB] = rootA;
  else parent[rootA] = rootB;
}

/** The first run of the region that run i belongs to, in what joinRuns gave. */
export function rootOf(parent: Int32Array, i: number): number {
  let root = i;
  while (parent[root] !== root) root = parent[root]!;
  for (let at = i; parent[at] !== root; ) {
    const next = parent[at]!;
    parent[at] = root;
    at = next;
  }
  return root;
}

/** Pixels and box of each region, at the number of its first run; 0 pixels at all others. */
interface Regions extends Runs {
  readonly pixels: Int32Array;
  readonly bottom: Int32Array;
}

/** The first run of a region, which is also its topmost, takes in the others: its ends become those of the box. */
function sumUp(runs: Runs): Regions {
  const { count, y, from, to } = runs;
  const parent = joinRuns(runs);
  const pixels = new Int32Array(count);
  const bottom = new Int32Array(count);
  for (let i = 0; i < count; i += 1) {
    const root = rootOf(parent, i);
    pixels[root]! += to[i]! - from[i]!;
    bottom[root] = y[i]! + 1;
    if (root === i) continue;
    from[root] = Math.min(from[root]!, from[i]!);
    to[root] = Math.max(to[root]!, to[i]!);
  }
  return { ...runs, pixels, bottom };
}

function areaAt({ pixels, y, from, to, bottom }: Regions, root: number): ConnectedArea {
  const boxPx = {
    x: from[root]!,
    y: y[root]!,
    width: to[root]! - from[root]!,
    height: bottom[root]! - y[root]!,
  };
  return { pixels: pixels[root]!, boxPx };
}
