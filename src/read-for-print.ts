import { type PrintRequest, placeArtwork } from './check-artwork.ts';
import type { Artwork } from './formats/artwork.ts';
import { limitsWith } from './formats/limits.ts';
import { MM_PER_INCH } from './geometry/length.ts';
import { turnSize } from './job/art-frame.ts';
import { type ReadOptions, readArtwork } from './read-artwork.ts';

/**
 * Reads an artwork; a drawing is drawn a second time so large that its visible part has the pixels of the
 * print-ready file, as far as the limits allow.
 * @throws BlankcheckError of kind `artwork` for bytes that cannot be read, `usage` for a request that cannot be met.
 */
export async function readForPrint(
  bytes: Uint8Array,
  request: PrintRequest,
  options: ReadOptions = {},
): Promise<Artwork> {
  const artwork = await readArtwork(bytes, options);
  if (artwork.vector === null) return artwork;
  const { job, extents } = placeArtwork(artwork, request);
  if (job === null) return artwork;
  const turned = turnSize(job.placementMm, job.turn);
  const perPixel = (mm: number, px: number) => ((mm / MM_PER_INCH) * job.ppi) / px;
  const scaleX = perPixel(turned.width, job.contentBoxPx.width);
  const scaleY = perPixel(turned.height, job.contentBoxPx.height);
  const { maxPixels, maxSvgSidePx } = limitsWith(options.limits);
  const within = Math.min(
    1,
    Math.sqrt(maxPixels / (extents.widthPx * scaleX * extents.heightPx * scaleY)),
    maxSvgSidePx / (extents.widthPx * scaleX),
    maxSvgSidePx / (extents.heightPx * scaleY),
  );
  const pixels = (length: number, scale: number) => Math.max(1, Math.floor(length * scale * within));
  return readArtwork(bytes, {
    ...options,
    drawAt: { widthPx: pixels(extents.widthPx, scaleX), heightPx: pixels(extents.heightPx, scaleY) },
  });
}
