import { type LightnessTable, UNITS_PER_LIGHTNESS } from '../icc/lightness-table.ts';
import { bandsOverWhite } from '../raster/bands-over-white.ts';
import { channelsOf, fullScaleOf, type Raster } from '../raster/raster.ts';

/** Halvings of the way to white: finer than a step of 16 bits. */
const HALVINGS = 17;

/**
 * The raster, gray or rgb, with every visible pixel that prints darker than `below` L* moved towards white, in its own
 * space, until it is as light as `curve` says. What is printed is over white where alpha is partial: the same share of
 * the way to white serves for both. The very same raster where no pixel moves.
 */
export function lightenColours(
  raster: Raster,
  table: LightnessTable,
  curve: (lightness: number) => number,
  below: number,
): Raster {
  const channels = channelsOf(raster);
  const colourChannels = raster.hasAlpha ? channels - 1 : channels;
  const full = fullScaleOf(raster);
  const [red, green, blue] = table.findBounds(below).map((bound) => bound * full) as [number, number, number];
  const shareOf = makeShares(table, curve, full);
  let data: Raster['data'] | null = null;
  for (const { colours, visible, firstPixel, pixels } of bandsOverWhite(raster))
    for (let i = 0; i < pixels; i += 1) {
      const [r, g, b] = [colours[3 * i]!, colours[3 * i + 1]!, colours[3 * i + 2]!];
      if (visible[i] === 0 || r > red || g > green || b > blue) continue;
      const share = shareOf(r, g, b);
      if (share === 0) continue;
      data ??= raster.data.slice();
      const at = (firstPixel + i) * channels;
      // Rounded up: a colour must not fall short of the curve.
      for (let k = at; k < at + colourChannels; k += 1)
        data[k] = Math.ceil(data[k]! + share * (full - data[k]!));
    }
  return data === null ? raster : { ...raster, data };
}

/** The share of the way to white that a printed colour must go; each colour is searched for once. */
function makeShares(table: LightnessTable, curve: (lightness: number) => number, full: number) {
  const known = new Map<number, number>();
  const lightnessOf = (colour: readonly number[], share: number) =>
    table.measure(colour.map((sample) => (sample + share * (full - sample)) / full)).source;
  return (r: number, g: number, b: number): number => {
    const key = (r * 65536 + g) * 65536 + b;
    const before = known.get(key);
    if (before !== undefined) return before;
    const colour = [r, g, b];
    const own = lightnessOf(colour, 0);
    const wanted = curve(own);
    let [low, high] = [0, wanted - own > 1 / UNITS_PER_LIGHTNESS ? 1 : 0];
    for (let step = 0; step < HALVINGS && high > 0; step += 1) {
      const middle = (low + high) / 2;
      if (lightnessOf(colour, middle) < wanted) low = middle;
      else high = middle;
    }
    known.set(key, high);
    return high;
  };
}
