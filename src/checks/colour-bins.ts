/** Colours counted in bins of 5 bits a channel; each bin knows its mean, so that a flat colour stays exact. */
export interface ColourBins {
  add(red: number, green: number, blue: number): void;
  /** The bins that hold anything, the fullest first, then the darker codes; at most so many. */
  list(most: number): readonly ColourBin[];
}

export interface ColourBin {
  readonly pixels: number;
  /** Mean of its colours, 0…1 each. */
  readonly mean: readonly [number, number, number];
}

const BINS = 32 ** 3;

/** Empty bins for samples of 0…255 or 0…65535. */
export function makeColourBins(fullScale: 255 | 65535): ColourBins {
  const shift = fullScale === 255 ? 3 : 11;
  const counts = new Uint32Array(BINS);
  const sums = new Float64Array(BINS * 3);
  return {
    add(red, green, blue) {
      const bin = ((red >> shift) << 10) | ((green >> shift) << 5) | (blue >> shift);
      counts[bin] = counts[bin]! + 1;
      sums[3 * bin] = sums[3 * bin]! + red;
      sums[3 * bin + 1] = sums[3 * bin + 1]! + green;
      sums[3 * bin + 2] = sums[3 * bin + 2]! + blue;
    },
    list(most) {
      const filled: number[] = [];
      for (let bin = 0; bin < BINS; bin++) if (counts[bin]! > 0) filled.push(bin);
      filled.sort((a, b) => counts[b]! - counts[a]! || a - b);
      return filled.slice(0, most).map((bin) => {
        const pixels = counts[bin]!;
        const mean = (channel: number) => sums[3 * bin + channel]! / pixels / fullScale;
        return { pixels, mean: [mean(0), mean(1), mean(2)] };
      });
    },
  };
}
