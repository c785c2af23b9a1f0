import type { PrintPicture } from './checks/define-check.ts';
import { takeGamutCensus } from './checks/gamut-census.ts';
import type { ComposedPrint } from './compose-artwork.ts';
import { gamutTableOf, proofTableOf } from './conditions/colour-tables.ts';
import type { PrintingCondition } from './conditions/printing-condition.ts';
import type { Artwork } from './formats/artwork.ts';
import { drawMarksOver } from './formats/draw-marks.ts';
import { limitsWith } from './formats/limits.ts';
import { encodePng } from './formats/png-write.ts';
import { hashPixels, type PrintRecord } from './formats/print-record.ts';
import type { Drawing } from './geometry/drawing.ts';
import { MM_PER_INCH } from './geometry/length.ts';
import { SRGB_PROFILE } from './icc/srgb-profile.ts';
import type { BlankInHand } from './job/job.ts';
import { drawProof } from './pictures/draw-proof.ts';
import { type GamutMarks, type MarkedPlaces, markGamut } from './pictures/gamut-marks.ts';
import { layBelow } from './pictures/lay-below.ts';
import { readPrintRows } from './pictures/print-rows.ts';
import { type MarkedShare, writeProofCaption } from './pictures/proof-caption.ts';
import { frameProof } from './pictures/proof-frame.ts';
import { capitalsMm, leastCaptionMm, setCaption } from './pictures/set-caption.ts';
import { checkPixels } from './prepare/canvas.ts';
import { proofWrap } from './proof-wrap.ts';
import { createRaster, type Raster } from './raster/raster.ts';
import { VERSION } from './version.ts';

export interface ProofRequest {
  /** Paint over what is out of gamut. */
  readonly mark: boolean;
}

/** A proof as a file: a PNG to look at, never to print. */
export interface Proof {
  readonly bytes: Uint8Array;
  readonly widthPx: number;
  readonly heightPx: number;
  readonly ppi: number;
  readonly marked: boolean;
}

/**
 * What the pressed blank will look like, seen from the front: the print-ready picture in the colours that the condition
 * makes of it (of the art's own colours where the picture is not converted yet), on the blank's base colour, cut to its outline. A round one is shown from four sides and as its flat paper. Below the blank stands
 * that this is a proof, of what. The file carries the profile of sRGB and the program's own record. Same input, same bytes.
 * @throws BlankcheckError `print-too-large`; the signal's reason
 */
export async function proofArtwork(
  artwork: Pick<Artwork, 'sha256' | 'ownColours'>,
  blank: BlankInHand,
  { picture, plan, raster: print, profile: colours = SRGB_PROFILE }: ComposedPrint,
  condition: PrintingCondition,
  { mark, signal }: ProofRequest & { readonly signal?: AbortSignal },
): Promise<Proof> {
  const { ppi } = plan;
  const pad = plan.steps.find((step) => step.step === 'pad')!;
  const { marks, marked } = mark ? markArt(artwork, picture, pad, condition) : { marks: null, marked: null };
  const capitals = capitalsMm(ppi);
  const leastWidthPx = Math.ceil(toPx(leastCaptionMm(capitals), ppi));
  const frame = frameProof(blank, plan, blank.wrap ? 0 : leastWidthPx);
  const rows = readPrintRows(print, plan.mirrored);
  const table = proofTableOf(condition.profile, colours);
  const drawn = drawProof(rows, blank, frame, table, { marks });
  signal?.throwIfAborted();
  const limits = limitsWith();
  const { wrap, baseColour } = blank;
  const shown = wrap
    ? await proofWrap(
        drawn,
        frame,
        { baseColour, wrap },
        { capitalsMm: 1.6 * capitals, leastWidthPx, limits },
      )
    : drawn;
  signal?.throwIfAborted();
  const lines = writeProofCaption(blank, condition, marked);
  const caption = setCaption(lines, toMm(shown.widthPx, ppi), capitals);
  const captionPx = Math.ceil(toPx(caption.heightMm, ppi));
  checkPixels(
    shown.widthPx,
    shown.heightPx + captionPx,
    `the proof of ${blank.id} at ${ppi} pixels per inch`,
  );
  const raster = await layCaptionBelow(shown, caption.drawing, captionPx, ppi);
  const record: PrintRecord = {
    kind: 'proof',
    program: 'blankcheck',
    version: VERSION,
    sourceSha256: artwork.sha256,
    pixelSha256: hashPixels(raster),
    blankId: blank.id,
    widthMm: toMm(raster.widthPx, ppi),
    heightMm: toMm(raster.heightPx, ppi),
    ppi,
    mirrored: false,
  };
  const bytes = await encodePng(raster, { ppi, record, srgbAs: 'profile' });
  return { bytes, widthPx: raster.widthPx, heightPx: raster.heightPx, ppi, marked: mark };
}

/** The picture with black letters on opaque white paper below it. */
async function layCaptionBelow(
  shown: Raster,
  drawing: Drawing,
  heightPx: number,
  ppi: number,
): Promise<Raster> {
  const { widthPx } = shown;
  const paper = createRaster({ widthPx, heightPx, model: 'rgb', hasAlpha: false, depth: 8 });
  paper.data.fill(255);
  const strip = await drawMarksOver(paper, drawing, { x: ppi, y: ppi }, limitsWith());
  const raster = createRaster({ ...shown, heightPx: shown.heightPx + heightPx });
  raster.data.set(shown.data);
  layBelow(raster, strip);
  return raster;
}

/** The same pixels that the gamut check finds, from the same pass over the same picture. */
function markArt(
  { ownColours }: Pick<Artwork, 'ownColours'>,
  picture: PrintPicture,
  places: MarkedPlaces,
  { profile }: PrintingCondition,
): { readonly marks: GamutMarks; readonly marked: MarkedShare } {
  const table = gamutTableOf(profile, ownColours?.profile ?? SRGB_PROFILE);
  const census = takeGamutCensus(picture.raster, table);
  const sharePercent = (census.overPixels / Math.max(1, census.visiblePixels)) * 100;
  return {
    marks: markGamut(census, picture, places),
    marked: { sharePercent, limitDeltaE: table.limit },
  };
}

function toPx(mm: number, ppi: number): number {
  return (mm / MM_PER_INCH) * ppi;
}

function toMm(px: number, ppi: number): number {
  return (px / ppi) * MM_PER_INCH;
}
