/** A bin of colours that are much the same. */
export interface ColourBin {
  readonly pixels: number;
  /** Mean of its colours, 0…1 each. */
  readonly mean: readonly [number, number, number];
}

const BINS = 32 ** 3;

/** Colours counted in bins of 5 bits a channel; each bin knows its mean, so that a flat colour stays exact. */
export class ColourBins {
  readonly #fullScale: number;
  readonly #shift: number;
  readonly #counts = new Uint32Array(BINS);
  readonly #sums = new Float64Array(BINS * 3);

  /** For samples of 0…255 or 0…65535. */
  constructor(fullScale: 255 | 65535) {
    this.#fullScale = fullScale;
    this.#shift = fullScale === 255 ? 3 : 11;
  }

  add(red: number, green: number, blue: number): void {
    const shift = this.#shift;
    const sums = this.#sums;
    const bin = ((red >> shift) << 10) | ((green >> shift) << 5) | (blue >> shift);
    this.#counts[bin]! += 1;
    sums[3 * bin]! += red;
    sums[3 * bin + 1]! += green;
    sums[3 * bin + 2]! += blue;
  }

  /** The bins that hold anything, the fullest first, then the darker codes; at most so many. */
  list(most: number): readonly ColourBin[] {
    const counts = this.#counts;
    // One number each, larger for more pixels and then for a lower bin: numbers are sorted without asking back.
    const keys: number[] = [];
    for (let bin = 0; bin < BINS; bin++)
      if (counts[bin]! > 0) keys.push(counts[bin]! * BINS + (BINS - 1 - bin));
    const sorted = Float64Array.from(keys).sort();
    const listed: ColourBin[] = [];
    for (let i = sorted.length - 1; i >= 0 && listed.length < most; i--)
      listed.push(this.#describe(BINS - 1 - (sorted[i]! % BINS)));
    return listed;
  }

  #describe(bin: number): ColourBin {
    const pixels = this.#counts[bin]!;
    const mean = (channel: number) => this.#sums[3 * bin + channel]! / pixels / this.#fullScale;
    return { pixels, mean: [mean(0), mean(1), mean(2)] };
  }
}
