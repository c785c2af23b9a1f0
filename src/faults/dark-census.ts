import { type LightnessTable, UNITS_PER_LIGHTNESS } from '../icc/lightness-table.ts';
import { bandsOverWhite, type ColourBand } from '../raster/bands-over-white.ts';
import { fullScaleOf, type Raster } from '../raster/raster.ts';
import type { ShadowTiles } from './shadow-tiles.ts';

export interface DarkCensus {
  readonly visiblePixels: number;
  readonly darkPixels: number;
  /** 1 where a visible pixel is darker than the limit. */
  readonly dark: Uint8Array;
  /** 1 where a visible pixel is no lighter than the printed black, and prints as one tone with it. */
  readonly shadow: Uint8Array;
  readonly shadowPixels: number;
}

/**
 * Goes over the picture once, as it is printed: which visible pixels are darker than `darkLightness` in the art, and
 * which are darker than, and print at most, `tone` L* above the printed black. The lightness that the latter had in
 * the art goes to `tiles`.
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
  const shadowTo = table.printedBlack + limits.tone;
  const gathered = startGathering(raster, table, Math.max(limits.darkLightness, shadowTo));
  const darkUnits = limits.darkLightness * UNITS_PER_LIGHTNESS;
  const shadowUnits = shadowTo * UNITS_PER_LIGHTNESS;
  let visiblePixels = 0;
  let darkPixels = 0;
  let shadowPixels = 0;
  for (const band of bandsOverWhite(raster)) {
    const count = gather(gathered, band);
    const { places, lightness } = gathered;
    for (let i = 0; i < band.pixels; i++) visiblePixels += band.visible[i]!;
    let y = Math.floor(band.firstPixel / widthPx);
    for (let i = 0; i < count; i++) {
      const at = places[i]!;
      // Places come in order, so that the row need not be divided out.
      while (at >= (y + 1) * widthPx) y += 1;
      const inArt = lightness[2 * i]!;
      if (inArt < darkUnits) {
        dark[at] = 1;
        darkPixels += 1;
      }
      if (inArt > shadowUnits || lightness[2 * i + 1]! > shadowUnits) continue;
      shadow[at] = 1;
      shadowPixels += 1;
      tiles.add(at - y * widthPx, y, inArt);
    }
  }
  return { visiblePixels, darkPixels, dark, shadow, shadowPixels };
}

/** Tells the tiles where the picture, as it is printed, is lighter than `lightness`; bare paper too. */
export function addLightTiles(
  raster: Raster,
  table: LightnessTable,
  lightness: number,
  tiles: ShadowTiles,
): void {
  const [red, green, blue] = table.findBounds(lightness).map((bound) => bound * fullScaleOf(raster));
  const { widthPx } = raster;
  for (const { colours, firstPixel, pixels } of bandsOverWhite(raster)) {
    // Bands are whole rows.
    let y = firstPixel / widthPx;
    for (let i = 0; i < pixels; y += 1)
      for (let x = 0; x < widthPx; x += 1, i += 1)
        if (colours[3 * i + 1]! > green! || colours[3 * i]! > red! || colours[3 * i + 2]! > blue!)
          tiles.addLight(x, y);
  }
}

/** What a band holds that can be so dark, with room for it that is used again for the next band. */
interface Gathered {
  readonly table: LightnessTable;
  /** The brightest samples that can be so dark. */
  readonly bounds: readonly [number, number, number];
  places: Uint32Array;
  /** In the art and as printed, two for each place. */
  lightness: Uint16Array;
  colours: Uint8Array | Uint16Array;
}

function startGathering(raster: Raster, table: LightnessTable, upToLightness: number): Gathered {
  const scale = fullScaleOf(raster);
  const [red, green, blue] = table.findBounds(upToLightness);
  return {
    table,
    bounds: [red! * scale, green! * scale, blue! * scale],
    places: new Uint32Array(0),
    lightness: new Uint16Array(0),
    colours: new Uint8Array(0),
  };
}

/** Measures only the visible pixels of a band that can be so dark: in most pictures they are few. Returns how many. */
function gather(into: Gathered, { colours, visible, firstPixel, pixels }: ColourBand): number {
  if (into.places.length < pixels) {
    into.places = new Uint32Array(pixels);
    into.lightness = new Uint16Array(2 * pixels);
    into.colours = colours instanceof Uint16Array ? new Uint16Array(3 * pixels) : new Uint8Array(3 * pixels);
  }
  const { table, places, lightness, colours: found } = into;
  const [red, green, blue] = into.bounds;
  let count = 0;
  for (let i = 0; i < pixels; i++) {
    if (
      colours[3 * i + 1]! > green ||
      colours[3 * i]! > red ||
      colours[3 * i + 2]! > blue ||
      visible[i] === 0
    )
      continue;
    found[3 * count] = colours[3 * i]!;
    found[3 * count + 1] = colours[3 * i + 1]!;
    found[3 * count + 2] = colours[3 * i + 2]!;
    places[count++] = firstPixel + i;
  }
  if (count > 0) {
    if (found instanceof Uint16Array) table.measure16(found, lightness, count);
    else table.measure8(found, lightness, count);
  }
  return count;
}
