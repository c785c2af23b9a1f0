import type { ArtTest } from './art-test.ts';

/** A stretch of a ray, as shares of its length: 0 at its start, 1 at its end. */
export interface Span {
  readonly from: number;
  readonly to: number;
}

/**
 * The stretches of the ray from (x0, y0) to (x1, y1) that run over art, in order and merged, exact to the
 * pixel's edge. Coordinates are in pixels, a pixel being the square from its index to the next.
 * @see J. Amanatides and A. Woo, "A Fast Voxel Traversal Algorithm for Ray Tracing", Eurographics (1987).
 */
export function findRaySpans(isArt: ArtTest, x0: number, y0: number, x1: number, y1: number): Span[] {
  const dx = x1 - x0;
  const dy = y1 - y0;
  const stepX = Math.sign(dx);
  const stepY = Math.sign(dy);
  let x = startCell(x0, stepX);
  let y = startCell(y0, stepY);
  const perX = stepX === 0 ? Infinity : 1 / Math.abs(dx);
  const perY = stepY === 0 ? Infinity : 1 / Math.abs(dy);
  let nextX = stepX === 0 ? Infinity : (stepX > 0 ? x + 1 - x0 : x0 - x) * perX;
  let nextY = stepY === 0 ? Infinity : (stepY > 0 ? y + 1 - y0 : y0 - y) * perY;
  const spans: Span[] = [];
  let from = -1;
  let at = 0;
  while (at < 1) {
    const until = Math.min(nextX, nextY, 1);
    const art = isArt(x, y);
    if (art && from < 0) from = at;
    if (!art && from >= 0) {
      if (at > from) spans.push({ from, to: at });
      from = -1;
    }
    at = until;
    if (nextX <= nextY) {
      x += stepX;
      nextX += perX;
    } else {
      y += stepY;
      nextY += perY;
    }
  }
  if (from >= 0) spans.push({ from, to: 1 });
  return spans;
}

/** A ray that starts on a pixel's edge and runs left or up starts in the pixel before it. */
function startCell(start: number, step: number): number {
  const cell = Math.floor(start);
  return step < 0 && cell === start ? cell - 1 : cell;
}
