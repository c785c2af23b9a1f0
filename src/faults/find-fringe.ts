import { practiceLimit } from '../catalogue/practice.ts';
import { dropNoise } from '../geometry/drop-noise.ts';
import type { RectPx } from '../geometry/rectangle.ts';
import type { Raster } from '../raster/raster.ts';
import { listRim, type Rgb, type RimPixel } from './rim-pixels.ts';

const WIDTH_MM = practiceLimit('fringe-width').value;
const SHARE = practiceLimit('fringe-share').value / 100;
/** A background nearer to the art than this (0 to 1) leaves no rim that shows; less of it than this share is noise (own choice). */
const APART = 0.15;
const LEAST_PART = 0.1;
/** What leads off the line to the background by more is no remainder of it but another colour (own choice). */
const ASIDE = 0.35;
/** Where more of the art than this ends softly, it has a glow or a shadow, whose rim cannot be told from a fringe (own choice). */
const SOFT_MOST = 0.3;
/** A rim of fewer pixels says nothing. */
const LEAST_PIXELS = 24;
/** Larger pixels print every soft edge as wide as a rim, and what lies five of them within is another part of the art (own choice, from real art). */
export const COARSEST_MM = 0.35;
/** An outline has one colour up to its end, a shadow as far as the art does not lie over it; in a fringe the background fades out of the rim at least so much, in its faint pixels too (own choice). */
const FADES_TO = 0.8;
const FAINT_FADES_TO = 0.88;
const FAINT = 0.5;

/** A rim in which the old background is left. */
export interface Fringe {
  /** Its pixels, each with the colour that it should have. */
  readonly pixels: readonly RimPixel[];
  /** What the background seems to have been, 0 to 1 each. */
  readonly background: Rgb;
  /** Of the rim's length, 0 to 1. */
  readonly share: number;
  readonly widthMm: number;
}

/**
 * The fringe of a cut-out: along enough of the rim the colour leads from that within towards one background, and the
 * more so the more open a pixel is. That tells it from outlines, which have one colour up to their end, from soft
 * clean edges, whose colour is that within, and from glows and shadows, which are wider or keep their colour while they
 * fade. null where there is none, and for pixels over `COARSEST_MM`, in which none can be told.
 */
export function findFringe(raster: Raster, boxPx: RectPx, pixelMm: number): Fringe | null {
  if (pixelMm > COARSEST_MM) return null;
  const { pixels: rim, ends: allEnds } = listRim(raster, boxPx);
  const ends = rim.filter(({ layer }) => layer === 1);
  const open = rim.filter(({ layer }) => layer < 0);
  if (ends.length < LEAST_PIXELS || open.length < LEAST_PIXELS) return null;
  if (ends.length < (1 - SOFT_MOST) * allEnds) return null;
  const background = guessBackground(open);
  const partOf = (one: RimPixel) => partOfBackground(one, background);
  const pixels = rim.filter((one) => partOf(one) >= LEAST_PART);
  const openOnes = pixels.filter(({ layer }) => layer < 0);
  const part = openOnes.length / open.length;
  const share = (part * ends.length) / allEnds;
  // Along the part that has it.
  const widthMm = dropNoise((pixels.length * pixelMm) / (part * ends.length));
  if (!(share >= SHARE) || widthMm < WIDTH_MM || !fades(openOnes, FADES_TO, partOf)) return null;
  const faint = openOnes.filter(({ alpha }) => alpha < FAINT);
  if (faint.length >= LEAST_PIXELS && !fades(faint, FAINT_FADES_TO, partOf)) return null;
  return { pixels, background, share, widthMm };
}

/** Each channel's median of what, mixed under the colour within by the pixel's own alpha, gives the pixel. */
function guessBackground(open: readonly RimPixel[]): Rgb {
  const faint = open.filter(({ alpha }) => alpha < 0.6);
  const from = faint.length >= LEAST_PIXELS ? faint : open;
  const median = (k: 0 | 1 | 2) => {
    const all = from.map(({ colour, within, alpha }) =>
      Math.min(1, Math.max(0, (colour[k] - alpha * within[k]) / (1 - alpha))),
    );
    return Float64Array.from(all).sort()[all.length >> 1]!;
  };
  return [median(0), median(1), median(2)];
}

/** How far the pixel's colour has gone from that within to the background, 0 to 1; 0 where it goes elsewhere. */
function partOfBackground({ colour, within }: RimPixel, background: Rgb): number {
  let [dot, square, length] = [0, 0, 0];
  for (let k = 0; k < 3; k += 1) {
    const way = background[k]! - within[k]!;
    const gone = colour[k]! - within[k]!;
    dot += way * gone;
    square += way * way;
    length += gone * gone;
  }
  if (square < APART * APART || dot <= 0) return 0;
  const aside = Math.max(0, length - (dot * dot) / square);
  return aside > ASIDE * ASIDE * length ? 0 : Math.min(1, dot / square);
}

/** Whether the more opaque of the pixels have clearly less of the background than the fainter ones. */
function fades(pixels: readonly RimPixel[], most: number, partOf: (one: RimPixel) => number): boolean {
  const sorted = [...pixels].sort((a, b) => a.alpha - b.alpha || a.pixel - b.pixel);
  const third = Math.floor(sorted.length / 3);
  const mean = (some: readonly RimPixel[]) => some.reduce((sum, one) => sum + partOf(one), 0) / some.length;
  return third > 0 && mean(sorted.slice(-third)) <= most * mean(sorted.slice(0, third));
}
