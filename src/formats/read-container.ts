import type { ArtworkFormat } from './artwork.ts';
import { readAvifFacts } from './avif-facts.ts';
import type { ContainerFacts, ContainerLimits } from './container-facts.ts';
import { readGifFacts } from './gif-facts.ts';
import { readJpegFacts } from './jpeg-facts.ts';
import { readPngFacts } from './png-facts.ts';
import { readTiffFacts } from './tiff-facts.ts';
import { readWebpFacts } from './webp-facts.ts';

const READERS: Readonly<
  Record<Exclude<ArtworkFormat, 'svg'>, (bytes: Uint8Array, limits: ContainerLimits) => ContainerFacts>
> = {
  png: readPngFacts,
  jpeg: readJpegFacts,
  webp: readWebpFacts,
  tiff: readTiffFacts,
  avif: readAvifFacts,
  gif: readGifFacts,
};

/**
 * Walks the container from its first byte to its last. Decoders draw what they can of a file that is cut off,
 * so that its end must be looked for; and they state a density of 72 where a file states none.
 * @throws `damaged`, `unsupported-format`
 */
export function readContainer(
  format: Exclude<ArtworkFormat, 'svg'>,
  bytes: Uint8Array,
  limits: ContainerLimits,
): ContainerFacts {
  return READERS[format](bytes, limits);
}
