import { channelsOf, type Raster } from '../raster/raster.ts';

/** Of photos nobody tells it from the art at the size of a page (own choice, by eye). */
const QUALITY = 78;

/** An 8-bit rgb picture in sRGB, with or without alpha, as a WebP to look at: lossy and untagged. Same input, same bytes. */
export async function encodeWebp(raster: Raster): Promise<Uint8Array> {
  const image = await load(raster);
  return image.webp({ quality: QUALITY, alphaQuality: 90, effort: 2 }).toBuffer();
}

/** The same as a bare PNG, which is larger, and which every reader knows. */
export async function encodeSmallPng(raster: Raster): Promise<Uint8Array> {
  const image = await load(raster);
  return image.png({ compressionLevel: 3, adaptiveFiltering: false }).toBuffer();
}

/** An 8-bit gray picture as a bare PNG. */
export async function encodeGrayPng(raster: Raster): Promise<Uint8Array> {
  const image = await load(raster);
  return image.toColourspace('b-w').png({ compressionLevel: 9, adaptiveFiltering: false }).toBuffer();
}

async function load(raster: Raster) {
  const { default: sharp } = await import('sharp');
  return sharp(raster.data, {
    raw: { width: raster.widthPx, height: raster.heightPx, channels: channelsOf(raster) as 1 | 3 | 4 },
  });
}
