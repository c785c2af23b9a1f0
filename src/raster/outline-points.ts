import type { PointPx, RectPx } from '../geometry/rectangle.ts';
import type { ArtTest } from './art-test.ts';

/** More points than this are drawn together: enough for any outline that a person would cut. */
const MOST_POINTS = 4000;

/**
 * Points that bound the art inside `box`: corners of the pixels on its outer rim, the side that clear pixels reach
 * from outside. What lies within a region without holes is decided by them alone; the hull would say too much where
 * the outline has inward corners. Ragged art of very many rim pixels is bounded by the boxes of small cells instead,
 * which hold all of it and little more.
 */
export function listOutlinePoints(isArt: ArtTest, box: RectPx): PointPx[] {
  const rim = findOuterRim(isArt, box);
  let cellPx = 1;
  let boxes = boxesOf(rim, box, cellPx);
  while (boxes.length * 4 > MOST_POINTS) {
    cellPx *= 2;
    boxes = boxesOf(rim, box, cellPx);
  }
  return boxes.flatMap(({ left, top, right, bottom }) => [
    { x: left, y: top },
    { x: right, y: top },
    { x: left, y: bottom },
    { x: right, y: bottom },
  ]);
}

/** Index (within the box, rows run on) of every art pixel that a flood of clear pixels from outside touches by a side. */
function findOuterRim(isArt: ArtTest, { x: left, y: top, width, height }: RectPx): number[] {
  const frame = width + 2;
  const seen = new Uint8Array(frame * (height + 2));
  const rim: number[] = [];
  const open = [0];
  seen[0] = 1;
  for (let at = open.pop(); at !== undefined; at = open.pop()) {
    const column = at % frame;
    const row = (at - column) / frame;
    for (const [nextColumn, nextRow] of [
      [column - 1, row],
      [column + 1, row],
      [column, row - 1],
      [column, row + 1],
    ] as const) {
      if (nextColumn < 0 || nextRow < 0 || nextColumn >= frame || nextRow >= height + 2) continue;
      const next = nextRow * frame + nextColumn;
      if (seen[next] === 1) continue;
      seen[next] = 1;
      const inside = nextColumn > 0 && nextRow > 0 && nextColumn <= width && nextRow <= height;
      if (inside && isArt(left + nextColumn - 1, top + nextRow - 1))
        rim.push((nextRow - 1) * width + nextColumn - 1);
      else open.push(next);
    }
  }
  return rim;
}

interface Box {
  left: number;
  top: number;
  right: number;
  bottom: number;
}

/** The boxes of the rim pixels, cell by cell of the given size; none for cells without. */
function boxesOf(rim: readonly number[], { x, y, width }: RectPx, cellPx: number): Box[] {
  const boxes = new Map<number, Box>();
  const cellsAcross = Math.ceil(width / cellPx);
  for (const at of rim) {
    const column = at % width;
    const row = (at - column) / width;
    const cell = Math.floor(row / cellPx) * cellsAcross + Math.floor(column / cellPx);
    const pixel = { left: x + column, top: y + row, right: x + column + 1, bottom: y + row + 1 };
    const box = boxes.get(cell);
    if (box === undefined) boxes.set(cell, pixel);
    else {
      box.left = Math.min(box.left, pixel.left);
      box.top = Math.min(box.top, pixel.top);
      box.right = Math.max(box.right, pixel.right);
      box.bottom = Math.max(box.bottom, pixel.bottom);
    }
  }
  return [...boxes.values()];
}
