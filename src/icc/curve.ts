/**
 * A one-dimensional function on 0…1. A table is interpolated linearly; a parametric one is
 * (a x + b)^gamma + e from d on, and c x + f below. Results are clipped to 0…1.
 * @see ICC.1:2022, 10.6 curveType and 10.18 parametricCurveType
 */
export type Curve = { readonly kind: 'table'; readonly values: Uint16Array } | ParametricCurve;

export interface ParametricCurve {
  readonly kind: 'parametric';
  readonly gamma: number;
  readonly a: number;
  readonly b: number;
  readonly c: number;
  readonly d: number;
  readonly e: number;
  readonly f: number;
}

/** The curve x^gamma. */
export function powerCurve(gamma: number): ParametricCurve {
  return { kind: 'parametric', gamma, a: 1, b: 0, c: 0, d: 0, e: 0, f: 0 };
}

/** True for the curve that changes nothing. */
export function isIdentity(curve: Curve): boolean {
  if (curve.kind === 'table')
    return curve.values.length === 2 && curve.values[0] === 0 && curve.values[1] === 65535;
  return curve.gamma === 1 && curve.a === 1 && curve.b === 0 && curve.e === 0 && curve.d <= 0;
}

/** The curve's value, 0…1, at `x`; an `x` outside 0…1 is clipped first. */
export function evaluateCurve(curve: Curve, x: number): number {
  const clipped = clip(x);
  return curve.kind === 'table' ? lookUp(curve.values, clipped) : clip(evaluateFormula(curve, clipped));
}

function lookUp(values: Uint16Array, x: number): number {
  const last = values.length - 1;
  const place = x * last;
  const cell = Math.min(Math.floor(place), last - 1);
  const low = values[cell]!;
  return (low + (values[cell + 1]! - low) * (place - cell)) / 65535;
}

function evaluateFormula({ gamma, a, b, c, d, e, f }: ParametricCurve, x: number): number {
  return x >= d ? Math.max(0, a * x + b) ** gamma + e : c * x + f;
}

/** Not-a-number counts as 0, so that an absurd curve still gives a colour. */
function clip(x: number): number {
  return x > 0 ? Math.min(x, 1) : 0;
}
