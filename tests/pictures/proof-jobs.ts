import { PNG } from 'pngjs';
import type { BlankRecord } from '../../src/catalogue/records.ts';
import { type PrintRequest, pictureArtwork } from '../../src/check-artwork.ts';
import { composeArtwork } from '../../src/compose-artwork.ts';
import { loadCondition } from '../../src/conditions/load-condition.ts';
import type { Artwork } from '../../src/formats/artwork.ts';
import { MM_PER_INCH } from '../../src/geometry/length.ts';
import { type Proof, proofArtwork } from '../../src/proof-artwork.ts';
import type { Raster } from '../../src/raster/raster.ts';
import { PLATE } from '../checks/jobs.ts';
import { artworkOf } from '../pictures.ts';

/** Ten pixels a millimetre. */
const PPI = 254;
/** Clear pixels round the outline: 3 mm. */
const MARGIN_MM = 3;

export interface DrawnProof extends Proof {
  /** Straight RGBA of the pixel that holds a point on the blank, in mm from the top left of its outline box. */
  at(xMm: number, yMm: number): readonly number[];
  readonly pixels: PNG;
}

/** The proof of a picture on a blank, under the reference condition. */
export async function drawProofOf(
  raster: Raster,
  {
    blank = PLATE,
    mark = false,
    changes = {},
    ...request
  }: Partial<Omit<PrintRequest, 'blank'>> & {
    readonly blank?: BlankRecord;
    readonly mark?: boolean;
    readonly changes?: Partial<Artwork>;
  } = {},
): Promise<DrawnProof> {
  const artwork = artworkOf(raster, changes);
  const pictured = await pictureArtwork(artwork, { blank, ppi: PPI, fit: 'cover', ...request });
  const composed = await composeArtwork(artwork, pictured);
  const condition = await loadCondition('coated-reference');
  const proof = await proofArtwork(artwork, pictured.blank, composed!, condition, { mark });
  const pixels = PNG.sync.read(Buffer.from(proof.bytes));
  const outline = pictured.blank.outline.box;
  const pxPerMm = proof.ppi / MM_PER_INCH;
  const left = (pixels.width - Math.ceil(outline.width * pxPerMm - 1e-6)) / 2;
  const top = Math.round(MARGIN_MM * pxPerMm);
  return {
    ...proof,
    pixels,
    at(xMm, yMm) {
      const x = Math.floor(left + xMm * pxPerMm);
      const y = Math.floor(top + yMm * pxPerMm);
      return [...pixels.data.subarray(4 * (y * pixels.width + x), 4 * (y * pixels.width + x) + 4)];
    },
  };
}
