import type { PointPx, RectPx } from '../geometry/rectangle.ts';
import type { ArtTest } from './art-test.ts';

/**
 * Corners of the pixels at the rim of the art inside `box`: every art pixel with a neighbour that is none.
 * Needed only where the hull says too much, in outlines with inward corners. Points may repeat.
 */
export function listOutlinePoints(isArt: ArtTest, box: RectPx): PointPx[] {
  const points: PointPx[] = [];
  for (let y = box.y; y < box.y + box.height; y += 1) {
    for (let x = box.x; x < box.x + box.width; x += 1) {
      if (!isArt(x, y)) continue;
      if (isArt(x - 1, y) && isArt(x + 1, y) && isArt(x, y - 1) && isArt(x, y + 1)) continue;
      points.push({ x, y }, { x: x + 1, y }, { x, y: y + 1 }, { x: x + 1, y: y + 1 });
    }
  }
  return points;
}
