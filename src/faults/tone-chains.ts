/** What a stair of tones is. Lengths in pixels, steps in L*. */
export interface StairLimits {
  /** Steps of more than this count. */
  readonly leastStep: number;
  /** Tones that last at least this long count. */
  readonly leastFlatPx: number;
  /** The change from one tone to the next takes at most this long: what antialiasing and enlarging leave. */
  readonly mostGapPx: number;
}

/** A stretch of a line that goes up or down in steps, with an even tone between each. */
export interface ToneChain {
  /** From the first of its tones to the end of the last, pixels. */
  readonly from: number;
  readonly to: number;
  /** Steps that count. */
  readonly steps: number;
  /** Mean length of the tones between two steps. */
  readonly flatPx: number;
  /** Mean of the steps that count, L*. */
  readonly step: number;
}

/** A tone is even to within this, L*: less than one code of 255 for all but the darkest tones (derived: 0.27 to 0.45). */
const EVEN = 0.3;
/** Larger steps are outlines and flat colours of a drawing (own choice). */
const MOST_STEP = 8;
/** So many steps one after the other make a gradient; three tones side by side are how drawings are shaded (own choice). */
const FEWEST_STEPS = 4;
/** Of the steps of a gradient that has too few tones nearly all are too large (own choice). */
const SHARE = 2 / 3;

interface Flat {
  readonly from: number;
  readonly to: number;
  readonly least: number;
  readonly most: number;
}

/** The stairs of a line of L*, from its start to its end. */
export function listToneChains(line: Float32Array, limits: StairLimits): ToneChain[] {
  const flats = listFlats(line, limits.leastFlatPx);
  const chains: ToneChain[] = [];
  let own: Flat[] = [];
  for (const flat of flats) {
    const last = own.at(-1);
    if (last !== undefined && !goesOn(own, last, flat, limits.mostGapPx)) {
      const chain = describe(own, limits.leastStep);
      if (chain !== null) chains.push(chain);
      // The tone at which the stair turns begins the next one.
      own = isNext(last, flat, limits.mostGapPx) ? [last] : [];
    }
    own.push(flat);
  }
  const chain = describe(own, limits.leastStep);
  if (chain !== null) chains.push(chain);
  return chains;
}

function listFlats(line: Float32Array, leastPx: number): Flat[] {
  const flats: Flat[] = [];
  let from = 0;
  let least = Infinity;
  let most = -Infinity;
  for (let i = 0; i < line.length; i += 1) {
    const tone = line[i]!;
    if (tone - least > EVEN || most - tone > EVEN) {
      if (i - from >= leastPx) flats.push({ from, to: i, least, most });
      from = i;
      least = tone;
      most = tone;
    }
    least = Math.min(least, tone);
    most = Math.max(most, tone);
  }
  if (line.length - from >= leastPx) flats.push({ from, to: line.length, least, most });
  return flats;
}

const toneOf = ({ least, most }: Flat): number => (least + most) / 2;

function isNext(a: Flat, b: Flat, mostGapPx: number): boolean {
  return b.from - a.to <= mostGapPx && Math.abs(toneOf(b) - toneOf(a)) <= MOST_STEP;
}

function goesOn(own: readonly Flat[], last: Flat, flat: Flat, mostGapPx: number): boolean {
  if (!isNext(last, flat, mostGapPx)) return false;
  const before = own.at(-2);
  return before === undefined || toneOf(flat) > toneOf(last) === toneOf(last) > toneOf(before);
}

function describe(flats: readonly Flat[], leastStep: number): ToneChain | null {
  const steps = flats.slice(1).map((flat, i) => Math.abs(toneOf(flat) - toneOf(flats[i]!)));
  const counted = steps.filter((step) => step > leastStep);
  if (counted.length < FEWEST_STEPS || counted.length < SHARE * steps.length) return null;
  const inner = flats.slice(1, -1);
  return {
    from: flats[0]!.from,
    to: flats.at(-1)!.to,
    steps: counted.length,
    flatPx: inner.reduce((sum, { from, to }) => sum + to - from, 0) / inner.length,
    step: counted.reduce((sum, step) => sum + step, 0) / counted.length,
  };
}
