import { dropNoise } from '../geometry/drop-noise.ts';
import type { LightnessTable } from '../icc/lightness-table.ts';
import { UNITS_PER_LIGHTNESS } from '../icc/lightness-table.ts';
import type { Raster } from '../raster/raster.ts';
import { addLightTiles, type DarkCensus, takeDarkCensus } from './dark-census.ts';
import { ShadowTiles } from './shadow-tiles.ts';

/** What counts as a shadow whose detail is lost. */
export interface ShadowLimits {
  /** Colours that print so many L* above the printed black, or less, are one tone with it. */
  readonly tone: number;
  /** Difference of L* in the art that is detail. */
  readonly detail: number;
  /** Of shadows below which nothing is looked for, mm2. */
  readonly leastMm2: number;
  /** L* below which an area counts as dark; it has nothing to do with detail. */
  readonly darkLightness: number;
}

export interface MergedShadows extends DarkCensus {
  /** How many are left in `shadow`, from which what has no detail was taken: it merges with nothing. */
  readonly mergedPixels: number;
}

/** Detail is looked for over three tiles: what is spread wider is no detail to the eye (own choice). */
export const TILE_MM = 1;
/** What is lighter than this beside a shadow makes its rim an edge, such as that of black lettering (own choice, from real art). */
const LIGHT = 30;

/** The shadows of a picture of `pixelMm` pixels whose detail prints as one tone. */
export function findMergedShadows(
  raster: Raster,
  table: LightnessTable,
  pixelMm: number,
  { tone, detail, leastMm2, darkLightness }: ShadowLimits,
): MergedShadows {
  const { widthPx, heightPx } = raster;
  const tiles = new ShadowTiles(widthPx, heightPx, Math.max(1, Math.round(TILE_MM / pixelMm)));
  const census = takeDarkCensus(raster, table, { darkLightness, tone }, tiles);
  const { shadow, shadowPixels } = census;
  if (dropNoise(shadowPixels * pixelMm ** 2) >= leastMm2) addLightTiles(raster, table, LIGHT, tiles);
  const hasDetail = tiles.findDetail(detail * UNITS_PER_LIGHTNESS);
  let mergedPixels = 0;
  for (let y = 0; shadowPixels > 0 && y < heightPx; y += 1)
    for (let x = 0, at = y * widthPx; x < widthPx; x += 1, at += 1) {
      if (shadow[at] === 0) continue;
      if (hasDetail(x, y)) mergedPixels += 1;
      else shadow[at] = 0;
    }
  return { ...census, mergedPixels };
}
