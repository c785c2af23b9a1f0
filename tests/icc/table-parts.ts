import { makeGenerator } from './random-colours.ts';

/** Entries of a power curve as whole numbers up to `full`. */
export const power = (gamma: number, entries: number, full: number) =>
  Array.from({ length: entries }, (_, i) => Math.round((i / (entries - 1)) ** gamma * full));

/** Nodes without any order, which show which corners an interpolation takes. */
export function randomNodes(seed: number, count: number, full: number): number[] {
  const next = makeGenerator(seed);
  return Array.from({ length: count }, () => (next() >>> 8) % (full + 1));
}

/** Nodes on a plane, which every interpolation gives alike: `weights[k]` for output k, one weight for each input. */
export function planeNodes(
  sizes: readonly number[],
  weights: readonly (readonly number[])[],
  full: number,
): number[] {
  const count = sizes.reduce((product, size) => product * size, 1);
  return Array.from({ length: count }, (_, node) => {
    let rest = node;
    const place = sizes
      .toReversed()
      .map((size) => {
        const at = rest % size;
        rest = Math.floor(rest / size);
        return at / (size - 1);
      })
      .toReversed();
    return weights.map((row) => Math.round(place.reduce((sum, value, i) => sum + value * row[i]!, 0) * full));
  }).flat();
}

/** Each output mixes the three inputs, and none leaves 0…1. */
export const MIXED = [
  [0.5, 0.3, 0.2],
  [0.1, 0.6, 0.3],
  [0.2, 0.2, 0.6],
];
