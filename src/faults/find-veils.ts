import { practiceLimit } from '../catalogue/practice.ts';
import type { InkColour } from '../geometry/drawing.ts';
import { dropNoise } from '../geometry/drop-noise.ts';
import type { RectPx } from '../geometry/rectangle.ts';
import type { IccProfile } from '../icc/profile.ts';
import type { Raster } from '../raster/raster.ts';
import { type AlphaCells, measureAlphaCells } from './alpha-cells.ts';
import { countAwayFromArt } from './away-from-art.ts';
import { measureBoxStep } from './box-step.ts';
import { boxOfArea, isEnd, listCellAreas, sumUpArea, visitNeighbours } from './cell-areas.ts';

const MEAN_MOST = practiceLimit('haze-mean').value;
const FLAT = practiceLimit('haze-flatness').value;
const AREA_MM2 = practiceLimit('haze-area').value;
const STEP = practiceLimit('visible-step').value;
/** Of the rim of what fades at least so much goes on at a lower alpha; less is grain (own choice). */
const FADING_SHARE = 0.15;
/** Means of cells are sorted into bins of this width, alpha of 255. */
const BIN = 0.25;

/** A flat veil of low alpha that ends where the art or the canvas does. */
export interface Veil {
  readonly boxPx: RectPx;
  readonly areaMm2: number;
  /** Mean of 255. */
  readonly alpha: number;
  /** L* of the bare base less that of the base with the veil. */
  readonly lightnessStep: number;
  /** The cells that it fills, of `cells`. */
  readonly area: readonly number[];
}

/** What art is printed on, and how large. */
export interface PrintedArt {
  readonly boxPx: RectPx;
  readonly pixelMm2: number;
  readonly source: IccProfile;
  readonly base: InkColour;
}

export interface Veils {
  /** Largest first, then from the top left. */
  readonly veils: readonly Veil[];
  readonly cells: AlphaCells;
}

/**
 * The veils that an eye sees on the base: cells of about 1 mm whose faint pixels have one alpha, hanging together over
 * the limit of area. Soft edges, glows and shadows have low alpha too, but fade: they go on at a lower alpha, where a
 * veil ends at nothing; and what lies within a millimetre of art is its edge, or a narrow shadow, so that at least half
 * of the limit must lie farther away. null for pictures without alpha and in inks, and where there is none.
 */
export function findVeils(raster: Raster, { boxPx, pixelMm2, source, base }: PrintedArt): Veils | null {
  const cells = measureAlphaCells(raster, boxPx, Math.sqrt(pixelMm2));
  if (cells === null) return null;
  const means = meanOfFaintCells(cells);
  const veils: Veil[] = [];
  for (const area of listFlatAreas(cells, means, AREA_MM2 / pixelMm2)) {
    const { pixels, alpha, overWhite } = sumUpArea(area, cells.faint);
    const areaMm2 = dropNoise(pixels * pixelMm2);
    if (areaMm2 < AREA_MM2 || alpha > MEAN_MOST || fades(cells, means, area, alpha)) continue;
    const { lightnessStep } = measureBoxStep(overWhite, source, base);
    if (lightnessStep < STEP) continue;
    const least = Math.ceil(AREA_MM2 / 2 / pixelMm2);
    if (countAwayFromArt(raster, cells, area, least) >= least)
      veils.push({ boxPx: boxOfArea(cells, area), areaMm2, alpha, lightnessStep, area });
  }
  veils.sort((a, b) => b.areaMm2 - a.areaMm2 || a.area[0]! - b.area[0]!);
  return veils.length === 0 ? null : { veils, cells };
}

/** Mean alpha of the faint pixels where they are at least half of what is visible in a cell; else NaN. */
function meanOfFaintCells({ visible, faint }: AlphaCells): Float64Array {
  return Float64Array.from(visible, (seen, i) =>
    seen > 0 && 2 * faint.pixels[i]! >= seen ? faint.alpha[i]! / faint.pixels[i]! : NaN,
  );
}

/** Areas whose cells are all within one span of alpha, the commonest span first. */
function* listFlatAreas(
  { faint, columns }: AlphaCells,
  means: Float64Array,
  leastPixels: number,
): Generator<readonly number[]> {
  const free = means.slice();
  for (;;) {
    const middle = findCommonest(free, faint.pixels, leastPixels);
    if (middle === null) return;
    const mask = Uint8Array.from(free, (mean) => (Math.abs(mean - middle) <= FLAT / 2 ? 1 : 0));
    for (let i = 0; i < mask.length; i += 1) if (mask[i] === 1) free[i] = NaN;
    yield* listCellAreas(mask, columns);
  }
}

/** The middle alpha of the span that holds most pixels; null where that is too few for the least area. */
function findCommonest(means: Float64Array, pixels: Int32Array, leastPixels: number): number | null {
  const bins = new Float64Array(Math.ceil(256 / BIN));
  for (let i = 0; i < means.length; i += 1)
    if (!Number.isNaN(means[i]!)) bins[Math.floor(means[i]! / BIN)]! += pixels[i]!;
  const span = Math.round(FLAT / BIN);
  let [best, at] = [0, 0];
  for (let from = 0, inside = 0; from < bins.length; from += 1) {
    inside += bins[from]! - (bins[from - span] ?? 0);
    if (inside > best) [best, at] = [inside, from - span + 1];
  }
  if (best === 0 || best < leastPixels - 1e-6) return null;
  let [below, bin] = [0, at];
  while (below + (bins[bin] ?? 0) <= best / 2) below += bins[bin++] ?? 0;
  return (bin + 0.5) * BIN;
}

/** Whether it goes on at a lower alpha along more of its rim than it ends at nothing; what the canvas cuts tells neither. */
function fades(cells: AlphaCells, means: Float64Array, area: readonly number[], alpha: number): boolean {
  const own = new Set(area);
  let [lower, ends, all] = [0, 0, 0];
  visitNeighbours(cells, area, (next) => {
    if (own.has(next)) return;
    all += 1;
    if (next === -1) return;
    if (isEnd(cells, next)) ends += 1;
    else if (means[next]! < alpha) lower += 1;
  });
  return lower > ends && lower > FADING_SHARE * all;
}
