import type { DrawnItem } from './drawing.ts';
import { findPathBounds } from './path.ts';
import { findBounds, type PointMm, type RectMm } from './rectangle.ts';

/** Box that holds all ink of a mark; null for a path without points. */
export function findItemBounds(item: DrawnItem): RectMm | null {
  return item.kind === 'path' ? findPathBounds(item.path) : findBounds(cornersOf(item));
}

function cornersOf(item: Exclude<DrawnItem, { kind: 'path' }>): readonly PointMm[] {
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
