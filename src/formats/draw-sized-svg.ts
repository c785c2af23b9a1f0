import type { Raster } from '../raster/raster.ts';
import type { Limits } from './limits.ts';
import { decodeError } from './open-picture.ts';
import { libraryTimeout } from './within-seconds.ts';

/** Size of the whole canvas of a drawing, as drawn. */
export interface DrawAt {
  readonly widthPx: number;
  readonly heightPx: number;
}

/** At this density lengths inside the drawing (a stroke of 1 mm) come out as CSS defines them. */
const CSS_PPI = 96;

/** The library takes a px for a point: this many pixels it makes of each at 96. */
const DRAWN_PER_PX = CSS_PPI / 72;

/** What to write as width or height of the root, without unit, for so many pixels. */
export function drawnLength(px: number): number {
  return px / DRAWN_PER_PX;
}

/**
 * Draws markup whose root has its `drawnLength` as width and height: 8-bit sRGB with alpha. It comes as bytes, never as
 * a path: from a path, files beside it would be loaded.
 * @throws `damaged`, `too-slow`
 */
export async function drawSizedSvg(
  markup: Buffer,
  { widthPx, heightPx }: DrawAt,
  limits: Limits,
): Promise<Raster> {
  const { default: sharp } = await import('sharp');
  const { data, info } = await sharp(markup, {
    density: CSS_PPI,
    failOn: 'warning',
    limitInputPixels: limits.maxPixels,
  })
    .resize(widthPx, heightPx, { fit: 'fill' })
    .ensureAlpha()
    .toColourspace('srgb')
    .timeout(libraryTimeout(limits.maxSeconds))
    .raw()
    .toBuffer({ resolveWithObject: true })
    .catch((error: unknown) => Promise.reject(decodeError('svg', error, limits)));
  const samples = new Uint8Array(data.buffer, data.byteOffset, data.byteLength);
  return {
    widthPx: info.width,
    heightPx: info.height,
    model: 'rgb',
    hasAlpha: true,
    depth: 8,
    data: samples,
  };
}
