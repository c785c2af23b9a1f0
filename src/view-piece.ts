import { familyOf } from './catalogue/catalogue.ts';
import type { PicturedArtwork, PrintRequest } from './check-artwork.ts';
import { composeArtwork, composeUnconverted } from './compose-artwork.ts';
import { proofTableOf } from './conditions/colour-tables.ts';
import type { PrinterConversion } from './conditions/printer-conversion.ts';
import type { PrintingCondition } from './conditions/printing-condition.ts';
import type { Artwork } from './formats/artwork.ts';
import { limitsWith } from './formats/limits.ts';
import { encodeSmallPng, encodeWebp } from './formats/write-small-picture.ts';
import { MM_PER_INCH } from './geometry/length.ts';
import { middleOf, type RectMm } from './geometry/rectangle.ts';
import { SRGB_PROFILE } from './icc/srgb-profile.ts';
import { linesOf } from './job/blank-lines.ts';
import type { BlankInHand } from './job/job.ts';
import { resolveBlank } from './job/resolve-blank.ts';
import { drawProof } from './pictures/draw-proof.ts';
import { readPrintRows } from './pictures/print-rows.ts';
import { frameProof } from './pictures/proof-frame.ts';
import type { Background, PrintPlan } from './prepare/step.ts';
import { proofWrap } from './proof-wrap.ts';
import type { PieceView } from './reports/html/piece-view.ts';
import { makeSmall, type SmallPicture } from './small-picture.ts';
import { viewMasks } from './view-masks.ts';

/** Longer side of a picture on a page: sharp on a phone, and 200 of them stay far under 30 MB (own choice). */
const LONGER_SIDE_PX = 480;
/** That of the art in a picture by itself, which is nearly as wide (own choice). */
const PICTURE_SIDE_PX = 960;
/** Capitals under the sides of a round body, in pixels of its picture (own choice). */
const CAPITALS_PX = 9;

export interface ViewPieceOptions {
  readonly condition: PrintingCondition;
  readonly conversion?: PrinterConversion | undefined;
  /** The padding that was asked for; the bare blank shows where it is left out. */
  readonly background?: Background | undefined;
}

/** What is shown of an artwork that could not be read. @throws as resolveBlank */
export function viewBareBlank(request: PrintRequest): PieceView {
  return viewBlank(resolveBlank(request, familyOf(request.blank)));
}

function viewBlank(blank: BlankInHand): PieceView {
  const { baseColour } = blank;
  return { lines: linesOf(blank), baseColour, art: null, proof: null, outOfGamut: null, dark: null };
}

/**
 * Small pictures of an artwork on its blank, made from the picture that was judged: within half of their pixels at its
 * place. What the masks show is what the checks of colours counted.
 */
export async function viewPiece(
  artwork: Pick<Artwork, 'ownColours'>,
  { blank, job, picture, rimPx }: Pick<PicturedArtwork, 'blank' | 'job' | 'picture' | 'rimPx'>,
  options: ViewPieceOptions,
): Promise<PieceView> {
  const bare = viewBlank(blank);
  if (job === null || picture === null) return bare;
  const small = await makeSmall({ job, picture, rimPx }, artwork, options, LONGER_SIDE_PX);
  const art = await composeArtwork(artwork, small);
  return {
    ...bare,
    art: art && {
      mediaType: 'image/webp',
      bytes: await encodeWebp(art.raster),
      boxMm: canvasBox(blank, small.plan),
    },
    proof: await viewProof(artwork, blank, small, options.condition),
    ...(await viewMasks(artwork, picture, options)),
  };
}

/** The art on its blank alone, larger, for a picture by itself; the bare blank where nothing is visible. */
export async function viewArt(
  artwork: Pick<Artwork, 'ownColours'>,
  { blank, job, picture, rimPx }: Pick<PicturedArtwork, 'blank' | 'job' | 'picture' | 'rimPx'>,
  options: Pick<ViewPieceOptions, 'background'>,
): Promise<PieceView> {
  const bare = viewBlank(blank);
  if (job === null || picture === null) return bare;
  const small = await makeSmall({ job, picture, rimPx }, artwork, options, PICTURE_SIDE_PX);
  const art = await composeArtwork(artwork, small);
  if (art === null) return bare;
  const boxMm = canvasBox(blank, small.plan);
  // What draws the picture knows no WebP.
  return { ...bare, art: { mediaType: 'image/png', bytes: await encodeSmallPng(art.raster), boxMm } };
}

/** Its middle is that of the edge, whatever whole pixels make of its size. */
function canvasBox({ edge }: BlankInHand, { widthPx, heightPx, ppi }: PrintPlan): RectMm {
  const middle = middleOf(edge.box);
  const [width, height] = [widthPx, heightPx].map((px) => (px / ppi) * MM_PER_INCH) as [number, number];
  return { x: middle.x - width / 2, y: middle.y - height / 2, width, height };
}

async function viewProof(
  artwork: Pick<Artwork, 'ownColours'>,
  blank: BlankInHand,
  small: SmallPicture,
  { profile }: PrintingCondition,
): Promise<PieceView['proof']> {
  const print = await composeUnconverted(artwork, small);
  if (print === null) return null;
  const frame = frameProof(blank, print.plan, 0);
  const table = proofTableOf(profile, print.profile ?? SRGB_PROFILE);
  const strip = drawProof(readPrintRows(print.raster, false), blank, frame, table, { marks: null });
  const { wrap, baseColour } = blank;
  const perMm = frame.ppi / MM_PER_INCH;
  const raster = wrap
    ? await proofWrap(
        strip,
        frame,
        { wrap, baseColour },
        {
          capitalsMm: CAPITALS_PX / perMm,
          leastWidthPx: 0,
          limits: limitsWith(),
        },
      )
    : strip;
  const boxMm = { ...frame.originMm, width: raster.widthPx / perMm, height: raster.heightPx / perMm };
  return { mediaType: 'image/webp', bytes: await encodeWebp(raster), boxMm, onBlank: wrap === null };
}
