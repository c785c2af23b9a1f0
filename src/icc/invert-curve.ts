import { type Curve, evaluateCurve, type ParametricCurve } from './curve.ts';

/** Steps of the table that stands in for the inverse of an unusual formula. */
const SAMPLES = 4096;

/**
 * The function that finds the x in 0…1 at which the curve has the value y. A y below or above all its values gives
 * the nearer end; where a flat stretch or a wavy curve leaves a choice, one x is taken, always the same.
 */
export function invertCurve(curve: Curve): (y: number) => number {
  if (curve.kind === 'table') return invertTable(Float64Array.from(curve.values, (value) => value / 65535));
  if (hasPlainInverse(curve)) return invertFormula(curve);
  return invertTable(Float64Array.from({ length: SAMPLES + 1 }, (_, i) => evaluateCurve(curve, i / SAMPLES)));
}

/** Both pieces rise, and the second starts no lower than the first ends. */
function hasPlainInverse({ gamma, a, b, c, d, e, f }: ParametricCurve): boolean {
  const start = Math.max(0, a * Math.max(d, 0) + b) ** gamma + e;
  return gamma > 0 && a > 0 && (d <= 0 || (c >= 0 && c * d + f <= start + 1e-3));
}

function invertFormula({ gamma, a, b, c, d, e, f }: ParametricCurve): (y: number) => number {
  const start = Math.max(0, a * Math.max(d, 0) + b) ** gamma + e;
  return (y) => {
    const x =
      y >= start || d <= 0
        ? (Math.max(0, y - e) ** (1 / gamma) - b) / a
        : c > 0
          ? Math.min((y - f) / c, d)
          : 0;
    return x > 0 ? Math.min(x, 1) : 0;
  };
}

/** Binary search on the running extreme, so that noise in a measured table cannot lead the search astray. */
function invertTable(values: Float64Array): (y: number) => number {
  const last = values.length - 1;
  const falls = values[0]! > values[last]!;
  const rising = new Float64Array(values.length);
  let highest = 0;
  for (let i = 0; i <= last; i++) {
    highest = Math.max(highest, values[falls ? last - i : i]!);
    rising[i] = highest;
  }
  const find = (y: number): number => {
    if (!(y > rising[0]!)) return 0;
    if (y >= rising[last]!) return 1;
    let below = 0;
    let above = last;
    while (above - below > 1) {
      const middle = (below + above) >> 1;
      if (rising[middle]! <= y) below = middle;
      else above = middle;
    }
    return (below + (y - rising[below]!) / (rising[above]! - rising[below]!)) / last;
  };
  return falls ? (y) => 1 - find(y) : find;
}
