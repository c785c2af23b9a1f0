import { decodeSrgb, encodeSrgb } from '../colour/srgb.ts';
import { type Curve, evaluateCurve } from './curve.ts';
import { invertCurve } from './invert-curve.ts';
import type { ColourModel } from './profile.ts';

/** One axis of a grid over device values: where along it a value lies, and back. Both ways on 0…1. */
export interface PlannedAxis {
  readonly size: number;
  readonly placeOf: (value: number) => number;
  readonly valueAt: (place: number) => number;
}

/** Intervals along each axis, by the number of channels: every fifth 8-bit code or so for three, memory's limit for four. */
const INTERVALS = { 3: 52, 4: 16 } as const;
/** A table's own intervals are divided evenly, up to as many. */
const MOST_INTERVALS = { 3: 52, 4: 24 } as const;

const even: Omit<PlannedAxis, 'size'> = { placeOf: (value) => value, valueAt: (place) => place };

/**
 * Axes on which the source runs nearly straight between nodes: for a matrix the lightness-like scale of sRGB, for a
 * table its own input curves and its own nodes, so that its interpolation is repeated and not blurred.
 */
export function planAxes(source: ColourModel, channels: 3 | 4): PlannedAxis[] {
  if (source.kind === 'matrix')
    return source.curves.map((curve) => ({ size: INTERVALS[3] + 1, ...lightnessAxis(curve) }));
  const [first, second] = source.kind === 'table' ? source.lut.elements : [];
  const curves = first?.kind === 'curves' ? first.curves : null;
  const grid = curves ? second : first;
  return Array.from({ length: channels }, (_, i) => ({
    size: grid?.kind === 'grid' ? matchSize(grid.sizes[i]!, channels) : INTERVALS[channels] + 1,
    ...(curves && grid?.kind === 'grid' ? curveAxis(curves[i]!) : even),
  }));
}

function matchSize(tableSize: number, channels: 3 | 4): number {
  const own = tableSize - 1;
  const most = MOST_INTERVALS[channels];
  return own > most ? most + 1 : own * Math.max(1, Math.floor(most / own)) + 1;
}

function lightnessAxis(curve: Curve): Omit<PlannedAxis, 'size'> {
  const { placeOf, valueAt } = curveAxis(curve);
  if (placeOf === even.placeOf) return even;
  return {
    placeOf: (value) => encodeSrgb(placeOf(value)),
    valueAt: (place) => valueAt(decodeSrgb(place)),
  };
}

/** A curve that does not rise all the way cannot be an axis; then the values themselves are. */
function curveAxis(curve: Curve): Omit<PlannedAxis, 'size'> {
  const samples = Array.from({ length: 257 }, (_, i) => evaluateCurve(curve, i / 256));
  if (samples.some((value, i) => i > 0 && value < samples[i - 1]!)) return even;
  return { placeOf: (value) => evaluateCurve(curve, value), valueAt: invertCurve(curve) };
}
