import { type LightnessTable, UNITS_PER_LIGHTNESS } from '../icc/lightness-table.ts';
import { bandsOverWhite } from '../raster/bands-over-white.ts';
import type { Raster } from '../raster/raster.ts';
import type { ShadowTiles } from './shadow-tiles.ts';

export interface DarkCensus {
  readonly visiblePixels: number;
  readonly darkPixels: number;
  /** 1 where a visible pixel is darker than the limit. */
  readonly dark: Uint8Array;
  /** 1 where a visible pixel prints as one tone with black. */
  readonly shadow: Uint8Array;
}

/**
 * Goes over the picture once, as it is printed: which visible pixels are darker than `darkLightness` in the art, and
 * which print at most `tone` L* above the printed black. The lightness that those had in the art goes to `tiles`.
 */
export function takeDarkCensus(
  raster: Raster,
  table: LightnessTable,
  limits: { readonly darkLightness: number; readonly tone: number },
  tiles: ShadowTiles,
): DarkCensus {
  const { widthPx, heightPx } = raster;
  const dark = new Uint8Array(widthPx * heightPx);
  const shadow = new Uint8Array(widthPx * heightPx);
  const darkBelow = limits.darkLightness * UNITS_PER_LIGHTNESS;
  const shadowTo = (table.printedBlack + limits.tone) * UNITS_PER_LIGHTNESS;
  let lightness = new Uint16Array(0);
  let visiblePixels = 0;
  let darkPixels = 0;
  for (const { colours, visible, firstPixel, pixels } of bandsOverWhite(raster)) {
    if (lightness.length < 2 * pixels) lightness = new Uint16Array(2 * pixels);
    if (colours instanceof Uint16Array) table.measure16(colours, lightness, pixels);
    else table.measure8(colours, lightness, pixels);
    for (let i = 0; i < pixels; i++) {
      if (visible[i] === 0) continue;
      visiblePixels += 1;
      const inArt = lightness[2 * i]!;
      const at = firstPixel + i;
      if (inArt < darkBelow) {
        dark[at] = 1;
        darkPixels += 1;
      }
      if (lightness[2 * i + 1]! > shadowTo) continue;
      shadow[at] = 1;
      tiles.add(at % widthPx, Math.floor(at / widthPx), inArt);
    }
  }
  return { visiblePixels, darkPixels, dark, shadow };
}
