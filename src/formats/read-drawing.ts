import type { Raster } from '../raster/raster.ts';
import type { VectorFacts } from './artwork.ts';
import type { DrawAt } from './draw-sized-svg.ts';
import { chooseDrawSize, drawSvg } from './draw-svg.ts';
import { measureInnerPictures } from './inner-pictures.ts';
import type { Limits } from './limits.ts';
import { scanSvg } from './svg-scan.ts';
import { readSvgText } from './svg-text.ts';

/**
 * A drawing at the wanted size, or at one that shows where its visible part is, and what it depends on.
 * @throws `damaged`, `drawing-without-size`, `too-many-bytes`, `too-many-pixels`, `too-slow`
 */
export async function readDrawing(
  bytes: Uint8Array,
  limits: Limits,
  drawAt: DrawAt | undefined,
): Promise<{ readonly raster: Raster; readonly vector: VectorFacts }> {
  const text = readSvgText(bytes, limits.maxSvgBytes);
  const scan = await scanSvg(text);
  const drawn = drawAt ?? chooseDrawSize(scan.size, limits);
  const perNatural = { x: drawn.widthPx / scan.size.widthPx, y: drawn.heightPx / scan.size.heightPx };
  const { pictures, unplaced } = await measureInnerPictures(scan.pictures, perNatural, limits);
  const { textElements, outsideReferences } = scan;
  return {
    raster: await drawSvg(text, scan, drawn, limits),
    vector: { textElements, outsideReferences, pictures, unplacedPictures: scan.unplacedPictures + unplaced },
  };
}
