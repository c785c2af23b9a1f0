import type { LightnessLines } from '../raster/lightness-lines.ts';
import { makePeriodogram, type Periodogram, strengthAt } from './periodogram.ts';
import { FIRST_PLACE, stepProfile } from './step-profile.ts';

/** A grid of straight edges across a whole picture. */
export interface BlockGrid {
  /** Distance of its lines, the same across and down. */
  readonly pitchPx: number;
  /** Where the first line of each direction lies, from the middle of the first pixel of the box, to a sixteenth of the pitch. */
  readonly firstPx: { readonly x: number; readonly y: number };
}

/** Pitches that are looked for: 8 px, reduced to half, enlarged up to eightfold (own choice). */
const LEAST_PITCH = 4;
const MOST_PITCH = 64;
/** The same with what measuring a pitch may be off by. */
const [LOWEST, HIGHEST] = [LEAST_PITCH * 0.98, MOST_PITCH * 1.02];
/** Harmonics that a line narrow against its pitch has; more lie beyond what enlarging leaves. */
const HARMONICS = 4;
/** Between noise, whose strength has the median 1 and hardly ever 4, and a line, in sums of logarithms (own choice, by the rates). */
const LEAST_SCORE = 2.5;
/** A grid that exceeds its blocks by less in the mean over the picture, L*, is seen nowhere: a twentieth of it with steps of 0.5. */
const LEAST_EXCESS = 0.025;
/** One strong line alone, as a screen or the kernel of an enlargement gives it, must not carry the rest. */
const STRONG = 30;
const FAINT = 0.3;
/** Parts that a block is divided into when its lines are placed, and how far from a line its inside begins: what a kernel of enlarging has spread lies nearer. */
const PARTS = 16;
const INSIDE = 4;
/** Pitches whose harmonics fall together: the spectrum takes the one for the other, lines in place do not. */
const MULTIPLES = [1 / 3, 1 / 2, 1, 2, 3];

/**
 * The grid that compression by blocks of 8 x 8 pixels leaves (ITU-T T.81, A.3.3), also where the picture was enlarged,
 * reduced or cropped since: a comb of steps with one pitch in rows and columns. null where there is none. Rows and
 * columns are those of one box. A grid found here may still be too faint to be seen.
 */
export function findBlockGrid(rows: LightnessLines, columns: LightnessLines): BlockGrid | null {
  const profiles = [stepProfile(rows), stepProfile(columns)] as const;
  const longest = Math.max(...profiles.map(({ length }) => length));
  if (Math.min(...profiles.map(({ length }) => length)) < 4 * LEAST_PITCH) return null;
  const spectra = profiles.map(makePeriodogram);
  let best = { pitchPx: 0, score: LEAST_SCORE };
  for (let frequency = 1 / MOST_PITCH; frequency <= 1 / LEAST_PITCH; frequency += 1 / (8 * longest)) {
    const score = Math.min(...spectra.map((spectrum) => scoreComb(spectrum, frequency)));
    if (score > best.score) best = { pitchPx: 1 / frequency, score };
  }
  return best.pitchPx === 0 ? null : placeComb(profiles, best.pitchPx);
}

function scoreComb(spectrum: Periodogram, frequency: number): number {
  let score = 0;
  for (let k = 1; k <= HARMONICS && k * frequency <= 0.5; k += 1)
    score += Math.log(Math.min(STRONG, Math.max(FAINT, strengthAt(spectrum, k * frequency) / 2)));
  return score;
}

/** Of the pitches near the spectrum's one and its multiples the one whose lines stand out most between others. */
function placeComb(profiles: readonly [Float64Array, Float64Array], about: number): BlockGrid | null {
  const longest = Math.max(...profiles.map(({ length }) => length));
  let best: BlockGrid | null = null;
  let most = LEAST_EXCESS;
  for (const multiple of MULTIPLES) {
    const middle = about * multiple;
    if (middle < LOWEST || middle > HIGHEST) continue;
    // The window of the spectrum leaves two periods in the length open; the last line shall be off by a part at most.
    const reach = (2 * middle ** 2) / longest;
    // A short profile says so little that the reach goes beyond every pitch that is looked for, even below nothing.
    const [from, to] = [Math.max(LOWEST, middle - reach), Math.min(HIGHEST, middle + reach)];
    for (let pitchPx = from; pitchPx <= to; pitchPx += reach / (2 * PARTS)) {
      const x = placeLines(profiles[0], pitchPx);
      const y = placeLines(profiles[1], pitchPx);
      const excess = Math.min(x.excess, y.excess);
      if (excess <= most) continue;
      most = excess;
      best = { pitchPx, firstPx: { x: x.firstPx, y: y.firstPx } };
    }
  }
  return best;
}

/** Where the lines of a pitch lie in a profile, and by how much they exceed the strongest place inside the blocks. */
function placeLines(
  profile: Float64Array,
  pitchPx: number,
): { readonly firstPx: number; readonly excess: number } {
  const folded = new Float64Array(PARTS);
  for (let part = 0; part < PARTS; part += 1)
    folded[part] = meanOfLines(profile, (part * pitchPx) / PARTS, pitchPx);
  const line = folded.indexOf(Math.max(...folded));
  let inside = -Infinity;
  for (let after = INSIDE; after <= PARTS - INSIDE; after += 1)
    inside = Math.max(inside, folded[(line + after) % PARTS]!);
  return { firstPx: (line * pitchPx) / PARTS + FIRST_PLACE, excess: folded[line]! - inside };
}

function meanOfLines(profile: Float64Array, first: number, pitchPx: number): number {
  let sum = 0;
  let count = 0;
  for (let place = first; place < profile.length - 1; place += pitchPx) {
    const i = Math.floor(place);
    sum += profile[i]! + (profile[i + 1]! - profile[i]!) * (place - i);
    count += 1;
  }
  return sum / count;
}
