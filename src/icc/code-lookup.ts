import { type Curve, evaluateCurve } from './curve.ts';

/** Bins of linear light; with a gamma near 2 one bin holds at most one 8-bit code except in the deepest black. */
const BINS = { 255: 4096, 65535: 65536 } as const;

/**
 * The way from linear light back to codes of a curve, rounded as exact arithmetic would: `first[bin]` is a code not
 * above the right one, and code + 1 is right from `from[code + 1]` on.
 */
export interface CodeLookup {
  readonly bins: number;
  readonly first: Uint16Array;
  readonly from: Float64Array;
}

/** `curve` leads from codes to linear light and rises; where it is flat, its lowest code is meant. */
export function makeCodeLookup(curve: Curve, fullScale: 255 | 65535): CodeLookup {
  const from = new Float64Array(fullScale + 2);
  from[0] = -Infinity;
  for (let code = 1; code <= fullScale; code++)
    from[code] = Math.max(from[code - 1]!, evaluateCurve(curve, (code - 0.5) / fullScale));
  from[fullScale + 1] = Infinity;
  const bins = BINS[fullScale];
  const first = new Uint16Array(bins + 1);
  let code = 0;
  for (let bin = 0; bin <= bins; bin++) {
    while (from[code + 1]! <= bin / bins) code++;
    first[bin] = code;
  }
  return { bins, first, from };
}

/** Linear light, 0…1, of every code. */
export function tabulateLight(curve: Curve, fullScale: 255 | 65535): Float64Array {
  return Float64Array.from({ length: fullScale + 1 }, (_, code) => evaluateCurve(curve, code / fullScale));
}
