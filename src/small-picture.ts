import type { PicturedArtwork } from './check-artwork.ts';
import type { PrintPicture } from './checks/define-check.ts';
import type { Artwork } from './formats/artwork.ts';
import { resample } from './formats/resample.ts';
import { MM_PER_INCH } from './geometry/length.ts';
import type { Job } from './job/job.ts';
import { bleedBoxOf } from './job/lines.ts';
import { planPrint } from './prepare/plan.ts';
import type { Background, PrintPlan } from './prepare/step.ts';
import { wholeOf } from './raster/pad.ts';

const CLEAR: Background = { r: 255, g: 255, b: 255, alpha: 0 };

/** A plan at a coarser resolution, and the picture that it is of. */
export interface SmallPicture {
  readonly plan: PrintPlan;
  readonly picture: PrintPicture;
}

/** Flat and as seen from the front, its longer side of `longerSidePx` or fewer. */
export async function makeSmall(
  {
    job,
    picture,
    rimPx,
  }: { readonly job: Job; readonly picture: PrintPicture } & Pick<PicturedArtwork, 'rimPx'>,
  artwork: Pick<Artwork, 'ownColours'>,
  { background = CLEAR }: { readonly background?: Background | undefined },
  longerSidePx: number,
): Promise<SmallPicture> {
  const plan = planSmall(job, { rimPx, background, artwork, longerSidePx });
  return { plan, picture: await reduce(picture, plan) };
}

/** The plan of the print at a coarser resolution, flat and as seen from the front. */
function planSmall(
  job: Job,
  {
    rimPx,
    background,
    artwork: { ownColours },
    longerSidePx,
  }: Pick<PicturedArtwork, 'rimPx'> & {
    readonly background: Background;
    readonly artwork: Pick<Artwork, 'ownColours'>;
    readonly longerSidePx: number;
  },
): PrintPlan {
  const { width, height } = bleedBoxOf(job.blank);
  const ppi = Math.min(job.ppi, (longerSidePx / Math.max(width, height)) * MM_PER_INCH);
  const plan = planPrint(
    { ...job, ppi },
    { rimPx, background, ...(ownColours ? { coloursFrom: ownColours.name } : {}) },
  );
  const pad = plan.steps.find((step) => step.step === 'pad')!;
  return {
    ...plan,
    steps: plan.steps.filter(({ step }) => step !== 'bend' && step !== 'mirror'),
    mirrored: false,
    widthPx: pad.widthPx,
    heightPx: pad.heightPx,
  };
}

async function reduce(picture: PrintPicture, { steps, ppi }: PrintPlan): Promise<PrintPicture> {
  const { raster, originMm } = picture;
  const turned = steps.some((step) => step.step === 'turn' && step.degrees !== 180);
  const resize = steps.find((step) => step.step === 'resize');
  const crop = steps.find((step) => step.step === 'crop')!;
  const { width, height } = resize ? { width: resize.widthPx, height: resize.heightPx } : crop.rectPx;
  const size = turned ? { widthPx: height, heightPx: width } : { widthPx: width, heightPx: height };
  const small = await resample(raster, { rectPx: wholeOf(raster), ...size });
  return { raster: small, originMm, pixelMm: MM_PER_INCH / ppi };
}
