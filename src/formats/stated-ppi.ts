import type { ArtworkFormat, StatedPpi } from './artwork.ts';
import { startsWith } from './other-formats.ts';
import { readResolution } from './tiff-facts.ts';
import { readTiffTags } from './tiff-tags.ts';

/**
 * Pixels per inch as the file states them, in the axes of the artwork as displayed; null when it states none.
 * In a JPEG the EXIF block wins over JFIF, as in the decoder: cameras and editors write EXIF and leave an older
 * JFIF segment as it was. In the other formats the container's own statement wins.
 * @param storedPpi the container's own density, in the axes of the stored pixels
 * @see CIPA DC-008 (Exif), tags 0x011A, 0x011B, 0x0128
 */
export function combineStatedPpi(
  format: ArtworkFormat,
  storedPpi: StatedPpi | null,
  exif: Uint8Array | undefined,
  orientation: number,
): StatedPpi | null {
  const fromExif = exif === undefined ? null : readExifPpi(exif);
  const stated = format === 'jpeg' ? (fromExif ?? storedPpi) : (storedPpi ?? fromExif);
  // Orientations 5 to 8 lay the stored rows down as columns.
  return stated !== null && orientation >= 5 ? { x: stated.y, y: stated.x } : stated;
}

function readExifPpi(exif: Uint8Array): StatedPpi | null {
  const [first] = readTiffTags(exif, startsWith(exif, 'Exif\0\0') ? 6 : 0)?.directories ?? [];
  return first ? readResolution(first) : null;
}
