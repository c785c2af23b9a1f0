/** Planes of equal hue, and lightness levels in each: fine enough that what lies between them is straight. */
const HUES = 90;
const LEVELS = 32;
/** No colour of a picture has more chroma in Oklab. */
const MOST_CHROMA = 0.4;
const HALVINGS = 9;
/**
 * One step of chroma weighs as 1.3 of lightness: of 0.5, 1, 1.5 and 2, values from 1 to 1.5 move the colours of a cube
 * of sRGB least by the mean CIEDE2000, more give up lightness for chroma. Own choice.
 */
const CHROMA_WEIGHT = 1.3;

/** The rim of the printable colours in planes of equal hue of Oklab. */
export interface HuePlanes {
  /** The printable colour of this hue that lies nearest, with no more chroma; lightness and chroma of it. */
  project(lightness: number, chroma: number, hue: number): readonly [lightness: number, chroma: number];
}

/** `isPrintable` is asked in each plane how far from gray the colours go; hue in radians. */
export function findHuePlanes(
  isPrintable: (lightness: number, chroma: number, hue: number) => boolean,
): HuePlanes {
  const rims = Array.from({ length: HUES }, (_, plane) =>
    Float64Array.from({ length: LEVELS + 1 }, (_, level) =>
      findChroma((chroma) => isPrintable(level / LEVELS, chroma, (plane / HUES) * 2 * Math.PI)),
    ),
  );
  return {
    project(lightness, chroma, hue) {
      const place = (((hue / (2 * Math.PI)) % 1) + 1) * HUES;
      const before = rims[Math.floor(place) % HUES]!;
      const after = rims[(Math.floor(place) + 1) % HUES]!;
      const weight = place - Math.floor(place);
      const rimAt = (level: number) => before[level]! + (after[level]! - before[level]!) * weight;
      let nearest = Number.POSITIVE_INFINITY;
      let found: readonly [number, number] = [lightness, 0];
      for (let level = 0; level < LEVELS; level++) {
        const from = rimAt(level);
        const along = (rimAt(level + 1) - from) * CHROMA_WEIGHT;
        const up = 1 / LEVELS;
        const dx = (chroma - from) * CHROMA_WEIGHT;
        const dy = lightness - level / LEVELS;
        const t = Math.min(1, Math.max(0, (dx * along + dy * up) / (along * along + up * up)));
        const distance = (dx - t * along) ** 2 + (dy - t * up) ** 2;
        if (distance >= nearest) continue;
        nearest = distance;
        found = [(level + t) / LEVELS, Math.min(chroma, from + (t * along) / CHROMA_WEIGHT)];
      }
      return found;
    },
  };
}

/** The most chroma from gray outward that holds, to a thousandth of the range; 0 where gray itself does not. */
export function findChroma(holds: (chroma: number) => boolean, most = MOST_CHROMA): number {
  let low = 0;
  let high = most;
  for (let i = 0; i < HALVINGS; i++) {
    const middle = (low + high) / 2;
    if (holds(middle)) low = middle;
    else high = middle;
  }
  return low;
}
