/**
 * For every pixel of rows of `widthPx`, how many steps, also over corners, lead to the nearest pixel where `isZero` is
 * 1: 0 there, at most `cap`. Beyond the picture lies none.
 * @see A. Rosenfeld and J. L. Pfaltz, "Distance functions on digital pictures", Pattern Recognition 1 (1968): the
 * chessboard distance, by one pass down and one up.
 */
export function measureNearest(isZero: Uint8Array, widthPx: number, cap: number): Uint8Array {
  const steps = isZero.map((one) => (one === 1 ? 0 : cap));
  const pass = (first: number, last: number, way: 1 | -1) => {
    for (let at = first; at !== last; at += way) {
      let best = steps[at]!;
      if (best === 0) continue;
      const x = at % widthPx;
      const row = at - way * widthPx;
      const inside = row >= 0 && row < steps.length;
      const behind = way === 1 ? x > 0 : x < widthPx - 1;
      const ahead = way === 1 ? x < widthPx - 1 : x > 0;
      if (behind) best = Math.min(best, steps[at - way]! + 1);
      if (inside) best = Math.min(best, steps[row]! + 1);
      if (inside && behind) best = Math.min(best, steps[row - way]! + 1);
      if (inside && ahead) best = Math.min(best, steps[row + way]! + 1);
      steps[at] = best;
    }
  };
  pass(0, steps.length, 1);
  pass(steps.length - 1, -1, -1);
  return steps;
}
