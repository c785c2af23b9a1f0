import { joinRuns, listRuns, rootOf } from '../raster/connected-areas.ts';
import { growMask, squareAbout } from './cell-squares.ts';
import type { DetailCells } from './detail-cells.ts';

/** Detail with as much between it hangs together: the space between two letters or words, in cells each way (own choice). */
const LINK = 2;
/** How far about a cluster it is asked whether it is calm there, in cells (own choice). */
const AROUND = 4;

/** How a cluster of detail lies in its picture. Shares of 0…1. */
export interface ClusterSurround {
  /** Cells about it that are not calm. */
  readonly shareBusy: number;
  /** Of its rim, what lies at the end of the print. */
  readonly shareAtEnd: number;
}

/** Cells of detail that hang together, in order, for each group of them; largest first. Only `printed` cells (1) count. */
export function findDetailClusters(
  { width, height, detail }: DetailCells,
  printed: Uint8Array,
): (readonly number[])[] {
  const own = detail.map((is, cell) => is & printed[cell]!);
  const labels = labelAreas(growMask(own, width, height, LINK), width);
  const clusters = new Map<number, number[]>();
  own.forEach((is, cell) => {
    if (is === 0) return;
    const cluster = clusters.get(labels[cell]!) ?? [];
    clusters.set(labels[cell]!, cluster);
    cluster.push(cell);
  });
  return [...clusters.values()].sort((a, b) => b.length - a.length || a[0]! - b[0]!);
}

/** The surround of a cluster: cells from `busy` L* of contrast on are not calm. */
export function measureSurround(
  cluster: readonly number[],
  { width, height, contrast, crossed }: DetailCells,
  printed: Uint8Array,
  busy: number,
): ClusterSurround {
  const body = new Set<number>();
  for (const cell of cluster)
    for (const near of squareAbout(cell, width, height, LINK)) if (printed[near] === 1) body.add(near);
  const belt = new Set<number>();
  let [rim, atEnd] = [0, 0];
  for (const cell of body) {
    const near = squareAbout(cell, width, height, 1);
    const ends = isAtEnd(near, printed);
    if (ends) atEnd += 1;
    if (ends || near.some((other) => !body.has(other))) rim += 1;
    else continue;
    for (const other of squareAbout(cell, width, height, AROUND))
      if (!body.has(other) && printed[other] === 1) belt.add(other);
  }
  const notCalm = [...belt].filter((cell) => crossed[cell] === 1 && contrast[cell]! >= busy).length;
  return { shareBusy: belt.size === 0 ? 1 : notCalm / belt.size, shareAtEnd: atEnd / rim };
}

/** An area of strong contrast, of one direction or several. */
export interface StrongArea {
  readonly cells: number;
  /** Those of them that have detail. */
  readonly detail: number;
  /** It goes on to the end of the print. */
  readonly runsOff: boolean;
}

/** For each cell the area of strong contrast that it is part of; null for none. */
export function findStrongAreas(
  { width, height, contrast, detail }: DetailCells,
  printed: Uint8Array,
  strong: number,
): (StrongArea | null)[] {
  const mask = Uint8Array.from(contrast, (own, cell) => (own >= strong ? printed[cell]! : 0));
  const labels = labelAreas(mask, width);
  const areas = new Map<number, { cells: number; detail: number; runsOff: boolean }>();
  return Array.from(labels, (label, cell) => {
    if (label < 0) return null;
    const area = areas.get(label) ?? { cells: 0, detail: 0, runsOff: false };
    areas.set(label, area);
    area.cells += 1;
    area.detail += detail[cell]!;
    area.runsOff ||= isAtEnd(squareAbout(cell, width, height, 1), printed);
    return area;
  });
}

function isAtEnd(near: readonly number[], printed: Uint8Array): boolean {
  return near.length < 9 || near.some((other) => printed[other] === 0);
}

/** The number of each marked cell's connected area, the same for all of an area; -1 elsewhere. */
function labelAreas(mask: Uint8Array, width: number): Int32Array {
  const runs = listRuns(mask, width);
  const parent = joinRuns(runs);
  const labels = new Int32Array(mask.length).fill(-1);
  for (let i = 0; i < runs.count; i += 1) {
    const row = runs.y[i]! * width;
    labels.fill(rootOf(parent, i), row + runs.from[i]!, row + runs.to[i]!);
  }
  return labels;
}
