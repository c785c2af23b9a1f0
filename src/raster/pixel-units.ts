import { channelsOf, type Raster } from './raster.ts';

/** The samples of a raster seen as the fewest equal units a pixel: what moves pixels about moves these. */
export interface PixelUnits {
  readonly data: Uint8Array | Uint16Array | Uint32Array;
  readonly perPixel: number;
}

/**
 * A view, never a copy: writing to it writes to the raster. An 8-bit rgb pixel with alpha is one unit of 32 bits,
 * which makes turning and mirroring about three times as fast as sample by sample.
 */
export function viewPixelUnits(raster: Raster): PixelUnits {
  const { data } = raster;
  const pixelBytes = channelsOf(raster) * data.BYTES_PER_ELEMENT;
  const { buffer, byteOffset, byteLength } = data;
  if (pixelBytes % 4 === 0 && byteOffset % 4 === 0)
    return { data: new Uint32Array(buffer, byteOffset, byteLength / 4), perPixel: pixelBytes / 4 };
  if (pixelBytes % 2 === 0 && byteOffset % 2 === 0)
    return { data: new Uint16Array(buffer, byteOffset, byteLength / 2), perPixel: pixelBytes / 2 };
  return { data: new Uint8Array(buffer, byteOffset, byteLength), perPixel: pixelBytes };
}

const LITTLE_ENDIAN = new Uint8Array(new Uint16Array([1]).buffer)[0] === 1;

/** An 8-bit rgb raster with alpha as one number a pixel, alpha in its highest byte, red in its lowest; null for any other. */
export function viewRgbaWords({
  model,
  hasAlpha,
  depth,
  data,
  widthPx,
  heightPx,
}: Raster): Uint32Array | null {
  const fits = model === 'rgb' && hasAlpha && depth === 8 && data.byteOffset % 4 === 0 && LITTLE_ENDIAN;
  return fits ? new Uint32Array(data.buffer, data.byteOffset, widthPx * heightPx) : null;
}
