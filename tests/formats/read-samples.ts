import { readArtwork } from '../../src/formats/read-artwork.ts';

/** The raster of an artwork, its samples as plain numbers. */
export async function readSamples(bytes: Uint8Array) {
  const { raster } = await readArtwork(bytes);
  return { model: raster.model, hasAlpha: raster.hasAlpha, depth: raster.depth, samples: [...raster.data] };
}
