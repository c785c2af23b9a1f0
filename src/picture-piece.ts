import { Buffer } from 'node:buffer';
import { drawnLength, drawSizedSvg } from './formats/draw-sized-svg.ts';
import { limitsWith } from './formats/limits.ts';
import { encodePng } from './formats/png-write.ts';
import { hashPixels } from './formats/print-record.ts';
import { MM_PER_INCH } from './geometry/length.ts';
import type { PagePiece } from './reports/html/piece-article.ts';
import { annotatePicture, pictureSvg } from './reports/picture/annotated-picture.ts';
import { VERSION } from './version.ts';

/** What screens without a density of their own are taken for. @see CSS Values and Units 4, 6.2 */
const SCREEN_PPI = 96;

/** A picture as a file: a PNG to look at on a phone or in a message. */
export interface AnnotatedPicture {
  readonly bytes: Uint8Array;
  readonly widthPx: number;
  readonly heightPx: number;
}

/**
 * One artwork on its blank as a single PNG: verdict, lines, the findings' numbers in place and the first of them in words.
 * All lettering is outlines, so it looks the same everywhere. It carries the program's record, so that it is never taken
 * for art. Same input, same bytes.
 */
export async function picturePiece(piece: PagePiece): Promise<AnnotatedPicture> {
  const markup = annotatePicture(piece);
  const { widthPx, heightPx } = markup;
  const svg = Buffer.from(pictureSvg(markup, drawnLength));
  const raster = await drawSizedSvg(svg, { widthPx, heightPx }, limitsWith());
  const { artwork, blank } = piece.report;
  const bytes = await encodePng(raster, {
    ppi: SCREEN_PPI,
    srgbAs: 'profile',
    record: {
      kind: 'proof',
      program: 'blankcheck',
      version: VERSION,
      sourceSha256: artwork.sha256 ?? '',
      pixelSha256: hashPixels(raster),
      blankId: blank.id,
      widthMm: (widthPx / SCREEN_PPI) * MM_PER_INCH,
      heightMm: (heightPx / SCREEN_PPI) * MM_PER_INCH,
      ppi: SCREEN_PPI,
      mirrored: false,
    },
  });
  return { bytes, widthPx, heightPx };
}
