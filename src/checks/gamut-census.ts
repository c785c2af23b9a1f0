import { type GamutTable, UNITS_PER_DELTA_E } from '../icc/gamut-table.ts';
import { bandsOverWhite } from '../raster/bands-over-white.ts';
import { fullScaleOf, type Raster } from '../raster/raster.ts';
import { ColourBins } from './colour-bins.ts';

/** A colour this far off is another colour to anybody (common practice, no source). */
const FAR_DELTA_E = 5;

/** What one pass over the picture found. */
export interface GamutCensus {
  readonly visiblePixels: number;
  /** Visible pixels over the condition's limit, and over 5 dE00. */
  readonly overPixels: number;
  readonly farPixels: number;
  /** 1 where a pixel is over the limit. */
  readonly mask: Uint8Array;
  /** The colours of those pixels. */
  readonly bins: ColourBins;
}

/** Taken once for each picture and condition: the check judges it, and pictures of findings show it. */
const known = new WeakMap<Raster, WeakMap<GamutTable, GamutCensus>>();

/** Judges every visible pixel as it will be printed: over white where its alpha is partial. Clear pixels never count. */
export function takeGamutCensus(raster: Raster, table: GamutTable): GamutCensus {
  const ofRaster = known.get(raster) ?? new WeakMap<GamutTable, GamutCensus>();
  known.set(raster, ofRaster);
  const census = ofRaster.get(table) ?? measure(raster, table);
  ofRaster.set(table, census);
  return census;
}

function measure(raster: Raster, table: GamutTable): GamutCensus {
  const mask = new Uint8Array(raster.widthPx * raster.heightPx);
  const bins = new ColourBins(fullScaleOf(raster));
  const limit = table.limit * UNITS_PER_DELTA_E;
  const far = FAR_DELTA_E * UNITS_PER_DELTA_E;
  let differences = new Uint16Array(0);
  let visiblePixels = 0;
  let overPixels = 0;
  let farPixels = 0;
  for (const { colours, visible, firstPixel, pixels } of bandsOverWhite(raster)) {
    if (differences.length < pixels) differences = new Uint16Array(pixels);
    if (colours instanceof Uint16Array) table.measure16(colours, differences, pixels);
    else table.measure8(colours, differences, pixels);
    for (let i = 0; i < pixels; i++) {
      if (visible[i] === 0) continue;
      visiblePixels += 1;
      const difference = differences[i]!;
      if (difference > far) farPixels += 1;
      if (difference <= limit) continue;
      overPixels += 1;
      mask[firstPixel + i] = 1;
      bins.add(colours[3 * i]!, colours[3 * i + 1]!, colours[3 * i + 2]!);
    }
  }
  return { visiblePixels, overPixels, farPixels, mask, bins };
}
