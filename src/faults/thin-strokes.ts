import { type BusySquares, busySpansOf, findBusySquares } from './busy-spans.ts';

/** Lightness of a picture as it is printed, one number of 0…255 a pixel, rows from the top. */
export interface LightnessPlane {
  readonly widthPx: number;
  readonly heightPx: number;
  readonly codes: Uint8Array;
}

export interface StrokeLimits {
  /** `dark` strokes on a lighter ground, or `light` ones on a dark one. */
  readonly tone: 'dark' | 'light';
  /** Strokes thinner than this count. */
  readonly belowPx: number;
}

/** Least step of a stroke from its ground, of 255; about 25 L* (own choice: fainter lines are texture). */
const CONTRAST = 60;
/** Ground up to here is dark, about L* 54 (own choice): on a lighter one too little dye lies beside a light stroke to fill it in. */
const DARK_GROUND = 128;
/** The ground on both sides is one colour to within this (own choice): it tells drawn strokes from the grain of photographs. */
const EVEN = 10;
/** Rim of a stroke on each side that belongs to its ground already: what antialiasing and a sharp kernel leave. */
const RIM_PX = 2;
/** A pixel counts as the middle of a stroke from this share of its depth on. */
const CORE = 0.8;

/** Across a stroke: along rows, columns, and both diagonals, with the length of one step in pixels. */
const WAYS = [
  [1, 0, 1],
  [0, 1, 1],
  [1, 1, Math.SQRT2],
  [1, -1, Math.SQRT2],
] as const;

/**
 * 1 for each pixel of a drawn stroke that is thinner than `belowPx`. The width is that of a sharp stroke with the same
 * sum of contrast across it, so that antialiasing does not matter; it is measured in four directions, of which the
 * nearest to the right one is at most 22.5 degrees off it and reads at most 8 % too much (1 / cos 22.5 degrees).
 */
export function findThinStrokes(plane: LightnessPlane, limits: StrokeLimits): Uint8Array {
  const mask = new Uint8Array(plane.codes.length);
  const squares = findBusySquares(plane, CONTRAST, reachOf(limits, 1));
  for (const [dx, dy, stepPx] of WAYS) markAcross(plane, limits, { dx, dy, stepPx }, squares, mask);
  return mask;
}

interface Way {
  readonly dx: number;
  readonly dy: number;
  readonly stepPx: number;
}

/** From the middle of a stroke to its ground on either side, in steps of this length. */
function reachOf({ belowPx }: StrokeLimits, stepPx: number): number {
  return Math.ceil(belowPx / 2 / stepPx + RIM_PX / stepPx);
}

function markAcross(
  { widthPx, heightPx, codes }: LightnessPlane,
  limits: StrokeLimits,
  { dx, dy, stepPx }: Way,
  squares: BusySquares,
  mask: Uint8Array,
): void {
  const reach = reachOf(limits, stepPx);
  const stride = dy * widthPx + dx;
  const marginX = dx === 0 ? 0 : reach;
  const marginY = dy === 0 ? 0 : reach;
  const sign = limits.tone === 'dark' ? 1 : -1;
  const lightest = limits.tone === 'dark' ? 255 : DARK_GROUND;
  const belowSteps = limits.belowPx / stepPx;
  const far = reach * stride;
  for (let y = marginY; y < heightPx - marginY; y += 1) {
    const spans = busySpansOf(squares, y);
    for (let span = 0; span < spans.length; span += 2) {
      const end = y * widthPx + Math.min(spans[span + 1]!, widthPx - marginX);
      for (let at = y * widthPx + Math.max(spans[span]!, marginX); at < end; at += 1) {
        const code = codes[at]!;
        const before = codes[at - far]!;
        if (sign * (before - code) < CONTRAST) continue;
        const after = codes[at + far]!;
        if (sign * (after - code) < CONTRAST) continue;
        if (before > lightest || before - after > EVEN || after - before > EVEN) continue;
        markStroke(codes, at, stride, reach, sign * (before + after) * 0.5, sign, belowSteps, mask);
      }
    }
  }
}

/** Marks what of the window belongs to the stroke, where this pixel is its middle and it is thin. */
function markStroke(
  codes: Uint8Array,
  at: number,
  stride: number,
  reach: number,
  ground: number,
  sign: number,
  belowSteps: number,
  mask: Uint8Array,
): void {
  let sum = 0;
  let deepest = 0;
  for (let i = -reach; i <= reach; i += 1) {
    const depth = Math.max(0, ground - sign * codes[at + i * stride]!);
    sum += depth;
    if (depth > deepest) deepest = depth;
  }
  if (sum >= belowSteps * deepest || ground - sign * codes[at]! < CORE * deepest) return;
  for (let i = -reach; i <= reach; i += 1)
    if (2 * (ground - sign * codes[at + i * stride]!) >= deepest) mask[at + i * stride] = 1;
}
