/**
 * For every pixel of rows of `widthPx`, how many steps, also over corners, lead to the nearest pixel where `isZero` is
 * 1: 0 there, at most `cap`. Beyond the picture lies none.
 * @see A. Rosenfeld and J. L. Pfaltz, "Distance functions on digital pictures", Pattern Recognition 1 (1968): the
 * chessboard distance, by one pass down and one up.
 */
export function measureNearest(isZero: Uint8Array, widthPx: number, cap: number): Uint8Array {
  const steps = new Uint8Array(isZero.length);
  for (let at = 0; at < steps.length; at += 1) steps[at] = isZero[at] === 1 ? 0 : cap;
  const heightPx = steps.length / widthPx;
  for (let y = 0; y < heightPx; y += 1) spread(steps, y * widthPx, widthPx, 1, y > 0);
  for (let y = heightPx - 1; y >= 0; y -= 1)
    spread(steps, (y + 1) * widthPx - 1, widthPx, -1, y < heightPx - 1);
  return steps;
}

/** One row, from its first pixel on in the direction `way`, from what lies behind and in the row before it. */
function spread(steps: Uint8Array, first: number, widthPx: number, way: 1 | -1, hasRow: boolean): void {
  const row = -way * widthPx;
  for (let i = 0, at = first; i < widthPx; i += 1, at += way) {
    let best = steps[at]!;
    if (best === 0) continue;
    if (i > 0) best = Math.min(best, steps[at - way]! + 1);
    if (hasRow) {
      best = Math.min(best, steps[at + row]! + 1);
      if (i > 0) best = Math.min(best, steps[at + row - way]! + 1);
      if (i < widthPx - 1) best = Math.min(best, steps[at + row + way]! + 1);
    }
    steps[at] = best;
  }
}
