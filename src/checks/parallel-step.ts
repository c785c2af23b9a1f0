import type { EdgeStrip, EdgeStrips } from './edge-strips.ts';

/** Codes of 255 by which a channel must change within a quarter of a millimetre, about 10 L* (own choice). */
const CONTRAST = 24;
/** Within this much along the ray the change happens (own choice: a rim of two pixels at 150 ppi). */
const RISE_MM = 0.25;
/** How far steps of one frame may lie apart: what a drawn frame strays (own choice). */
const STRAY_MM = 0.4;
/** Share of the rays that must meet it, so that it is a frame and no row of things (own choice). */
export const SHARE = 0.85;
/** Colours this alike are one (own choice: grain and JPEG stay below). */
export const ALIKE = 24;

interface Step {
  readonly atMm: number;
  readonly outer: readonly number[];
  readonly inner: readonly number[];
}

/** A step of colour that runs parallel to the edge all round. */
export interface ParallelStep {
  /** Median distance from the edge. */
  readonly distanceMm: number;
  /** Of the rays that were judged. */
  readonly share: number;
}

/**
 * The outermost step of colour at one distance from the edge all round, nearer than `belowMm`; null for none. The strip
 * outside it or what begins with it has one colour all round, which tells a frame from a texture that has steps everywhere.
 */
export function findParallelStep({ strips, stepMm }: EdgeStrips, belowMm: number): ParallelStep | null {
  const steps: Step[][] = [];
  for (const strip of strips) steps.push(listSteps(strip, stepMm));
  for (let atMm = 0; atMm < belowMm; atMm += STRAY_MM / 4) {
    const found: Step[] = [];
    for (const own of steps) {
      const strongest = strongestNear(own, atMm);
      if (strongest) found.push(strongest);
    }
    if (found.length < SHARE * strips.length) continue;
    const isOneColour = (side: 'outer' | 'inner') =>
      countAlike(found.map((step) => step[side])) >= SHARE * strips.length;
    if (!isOneColour('outer') && !isOneColour('inner')) continue;
    const distanceMm = median(found.map((step) => step.atMm));
    if (distanceMm < belowMm) return { distanceMm, share: found.length / strips.length };
  }
  return null;
}

/** Where the colour changes most, and by enough, along one ray. */
function listSteps(strip: EdgeStrip, stepMm: number): Step[] {
  const reach = Math.max(1, Math.round(RISE_MM / 2 / stepMm));
  const samples = strip.length / 3;
  const steps: Step[] = [];
  let start = 0;
  let last = 0;
  let own = changeAt(strip, reach, reach);
  for (let i = reach; i + reach < samples; i += 1) {
    const next = changeAt(strip, reach, i + 1);
    if (own > last) start = i;
    if (own >= CONTRAST && own >= last && own > next)
      steps.push({
        atMm: ((start + i) / 2) * stepMm,
        outer: colourOf(strip, start - reach),
        inner: colourOf(strip, i + reach),
      });
    [last, own] = [own, next];
  }
  return steps;
}

/** How far the colours so many samples before and behind one are apart; 0 where one of them is missing. */
function changeAt(strip: EdgeStrip, reach: number, i: number): number {
  return i < reach || i + reach >= strip.length / 3 ? 0 : largestDifference(strip, i - reach, i + reach);
}

function strongestNear(steps: readonly Step[], atMm: number): Step | undefined {
  let best: Step | undefined;
  let most = 0;
  for (const step of steps) {
    if (Math.abs(step.atMm - atMm) > STRAY_MM) continue;
    const size = distance(step.outer, step.inner);
    if (size > most) [best, most] = [step, size];
  }
  return best;
}

/** How many colours lie close to the median one. */
function countAlike(colours: readonly (readonly number[])[]): number {
  const middle = medianColour(colours);
  return colours.filter((colour) => distance(colour, middle) <= ALIKE).length;
}

/** The median of each channel. */
export function medianColour(colours: readonly ArrayLike<number>[]): number[] {
  return [0, 1, 2].map((channel) => median(colours.map((colour) => colour[channel]!)));
}

function colourOf(strip: EdgeStrip, i: number): number[] {
  return [...strip.subarray(3 * i, 3 * i + 3)];
}

function largestDifference(strip: EdgeStrip, a: number, b: number): number {
  let most = 0;
  for (let channel = 0; channel < 3; channel += 1)
    most = Math.max(most, Math.abs(strip[3 * a + channel]! - strip[3 * b + channel]!));
  return most;
}

/** The largest difference of a channel. */
function distance(a: readonly number[], b: readonly number[]): number {
  return Math.max(Math.abs(a[0]! - b[0]!), Math.abs(a[1]! - b[1]!), Math.abs(a[2]! - b[2]!));
}

function median(values: readonly number[]): number {
  return Float64Array.from(values).sort()[Math.floor(values.length / 2)]!;
}
