/**
 * A picture in memory: rows from the top, pixels from the left, samples interleaved, straight (not
 * premultiplied) alpha as the last sample of a pixel. `data.length` is widthPx * heightPx * channels.
 * 8-bit samples live in a Uint8Array (0…255), 16-bit ones in a Uint16Array (0…65535).
 */
export interface Raster {
  readonly widthPx: number;
  readonly heightPx: number;
  readonly model: ColourModel;
  readonly hasAlpha: boolean;
  readonly depth: 8 | 16;
  readonly data: Uint8Array | Uint16Array;
}

/** gray: 1 sample, rgb: 3, cmyk: 4 (0 = no ink). */
export type ColourModel = 'gray' | 'rgb' | 'cmyk';

const COLOUR_SAMPLES: Readonly<Record<ColourModel, number>> = { gray: 1, rgb: 3, cmyk: 4 };

/** Samples per pixel, alpha included: 1 to 5. */
export function channelsOf(raster: Pick<Raster, 'model' | 'hasAlpha'>): number {
  return COLOUR_SAMPLES[raster.model] + (raster.hasAlpha ? 1 : 0);
}

/** The largest sample value of the raster's depth: 255 or 65535. */
export function fullScaleOf(raster: Pick<Raster, 'depth'>): 255 | 65535 {
  return raster.depth === 8 ? 255 : 65535;
}

/** A raster filled with zeros (transparent, or black where it has no alpha). */
export function createRaster(shape: Omit<Raster, 'data'>): Raster {
  const samples = shape.widthPx * shape.heightPx * channelsOf(shape);
  return { ...shape, data: shape.depth === 8 ? new Uint8Array(samples) : new Uint16Array(samples) };
}
