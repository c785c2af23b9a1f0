import type { RectPx } from '../geometry/rectangle.ts';
import { channelsOf, fullScaleOf, type Raster } from './raster.ts';

/** How the pixels of a box of a gray or rgb raster lie; they are numbered from its top left, row by row. */
export interface BoxPixels {
  readonly data: Raster['data'];
  readonly widthPx: number;
  readonly hasAlpha: boolean;
  /** Samples of a pixel; alpha, if there is any, is the last. */
  readonly step: number;
  readonly full: number;
  /** Where green and blue lie after red; gray three times. */
  readonly green: number;
  readonly blue: number;
  readonly boxPx: RectPx;
}

export function pixelsOfBox(raster: Raster, boxPx: RectPx): BoxPixels {
  const { data, widthPx, hasAlpha } = raster;
  const [green, blue] = raster.model === 'gray' ? [0, 0] : [1, 2];
  return { data, widthPx, hasAlpha, step: channelsOf(raster), full: fullScaleOf(raster), green, blue, boxPx };
}

/** The number in the whole raster of a pixel of the box. */
export function pixelInRaster({ boxPx, widthPx }: BoxPixels, pixel: number): number {
  const { x, y, width } = boxPx;
  return (y + Math.floor(pixel / width)) * widthPx + x + (pixel % width);
}
