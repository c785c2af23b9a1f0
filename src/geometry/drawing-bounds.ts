import type { Drawing, DrawnItem } from './drawing.ts';
import { pathPoints } from './path.ts';
import { findBounds, type PointMm, type RectMm } from './rectangle.ts';

/** Box that holds all ink of a mark; null for a path without points. */
export function findItemBounds(item: DrawnItem): RectMm | null {
  return findBounds(cornersOf(item));
}

/** Box that holds all ink of a drawing; null where there is none. */
export function findDrawingBounds(drawing: Drawing): RectMm | null {
  return findBounds(drawing.flatMap(cornersOf));
}

function cornersOf(item: DrawnItem): readonly PointMm[] {
  if (item.kind === 'path') return pathPoints(item.path);
  if (item.kind === 'rect') {
    const { x, y, width, height } = item.rectMm;
    return [
      { x, y },
      { x: x + width, y: y + height },
    ];
  }
  const { from, to, widthMm } = item;
  const lengthMm = Math.hypot(to.x - from.x, to.y - from.y);
  if (lengthMm === 0) return [from];
  // Half the width to both sides, square to the line.
  const dx = ((from.y - to.y) / lengthMm) * (widthMm / 2);
  const dy = ((to.x - from.x) / lengthMm) * (widthMm / 2);
  return [from, to].flatMap(({ x, y }) => [
    { x: x + dx, y: y + dy },
    { x: x - dx, y: y - dy },
  ]);
}
