/** A small generator of whole numbers 0…2^32-1, the same on every machine (Numerical Recipes' constants). */
export function makeGenerator(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state;
  };
}

/** `count` colours of `channels` numbers, each 0…1, from a seed; the low bits of the generator are not used. */
export function randomColours(seed: number, count: number, channels: number): number[][] {
  const next = makeGenerator(seed);
  return Array.from({ length: count }, () =>
    Array.from({ length: channels }, () => (next() >>> 8) / (2 ** 24 - 1)),
  );
}
