import type { PicturedArtwork } from './check-artwork.ts';
import type { PrintPicture } from './checks/define-check.ts';
import {
  DRIVER_CONVERSION,
  type PrinterConversion,
  printerTransform,
} from './conditions/printer-conversion.ts';
import type { Artwork, OwnColours } from './formats/artwork.ts';
import { convertForPrinter } from './formats/convert-for-printer.ts';
import { convertToSrgb } from './formats/convert-to-srgb.ts';
import type { PdfPage } from './formats/pdf-write.ts';
import { resample } from './formats/resample.ts';
import type { IccProfile } from './icc/profile.ts';
import { SRGB_PROFILE } from './icc/srgb-profile.ts';
import { makeTransform } from './icc/transform.ts';
import { composePrint } from './prepare/carry-out.ts';
import type { PrintPlan } from './prepare/step.ts';
import type { Raster } from './raster/raster.ts';

/** A print-ready picture in memory: 8-bit sRGB or a printer's colours, as its plan says; and the picture of the art that it was made of. */
export interface ComposedPrint {
  readonly picture: PrintPicture;
  readonly plan: PrintPlan;
  readonly raster: Raster;
  /** Of the raster's samples, in a picture that is for a screen yet and not clipped to sRGB. */
  readonly profile?: IccProfile;
  /** Of a page for a printer whose scale is corrected; that of the plan on both axes when left out. */
  readonly densityPpi?: { readonly x: number; readonly y: number };
  /** The pages that a PDF is made of; left out for pictures. */
  readonly pages?: readonly PdfPage[];
}

export interface ComposeOptions {
  /** As the plan was made for. */
  readonly conversion?: PrinterConversion | undefined;
  readonly signal?: AbortSignal | undefined;
}

/** The print-ready picture before it is encoded; null when nothing is visible. @throws the signal's reason. */
export async function composeArtwork(
  { ownColours }: OwnArt,
  { plan, picture }: Pick<PicturedArtwork, 'plan' | 'picture'>,
  { signal, conversion }: ComposeOptions = {},
): Promise<ComposedPrint | null> {
  if (plan === null || picture === null) return null;
  const raster = await composePrint(
    picture.raster,
    conversion ? inOwnColours(plan, ownColours, picture) : plan,
    {
      resample,
      ...(conversion ? { convertForPrinter: printerConverter(conversion, ownColours) } : {}),
      ...(ownColours ? { convert: converterFrom(ownColours) } : {}),
      ...(signal ? { signal } : {}),
    },
  );
  return { picture, plan, raster };
}

/**
 * The print-ready picture as it stands before it is bent or converted for a printer: in the art's own colours,
 * unclipped, at its own depth. null when nothing is visible. @throws the signal's reason
 */
export async function composeUnconverted(
  { ownColours }: OwnArt,
  { plan, picture }: Pick<PicturedArtwork, 'plan' | 'picture'>,
  signal?: AbortSignal,
): Promise<ComposedPrint | null> {
  if (plan === null || picture === null) return null;
  const steps = plan.steps.filter(({ step }) => !FROM_OWN_COLOURS.has(step) && step !== 'bend');
  const pad = plan.steps.find((step) => step.step === 'pad')!;
  const unbent = { ...plan, steps, widthPx: pad.widthPx, heightPx: pad.heightPx };
  const raster = await composePrint(picture.raster, inOwnColours(unbent, ownColours, picture), {
    resample,
    keepDepth: true,
    ...(signal ? { signal } : {}),
  });
  return { picture, plan: unbent, raster, profile: ownColours?.profile ?? SRGB_PROFILE };
}

/** By these the art leaves its own colours. */
const FROM_OWN_COLOURS: ReadonlySet<string> = new Set(['convert', 'convert-for-printer']);

type OwnArt = Pick<Artwork, 'ownColours'>;

function printerConverter(
  conversion: PrinterConversion,
  ownColours: OwnColours | null,
): (raster: Raster) => Raster {
  return (raster) =>
    convertForPrinter(raster, printerTransform(conversion, ownColours?.profile ?? SRGB_PROFILE));
}

/**
 * The plan with its background, which is given in sRGB, in the colours of the art that is laid on it; as fine as the
 * art's samples are. White stays white.
 */
function inOwnColours(
  plan: PrintPlan,
  ownColours: OwnColours | null,
  { raster: { depth } }: PrintPicture,
): PrintPlan {
  if (ownColours === null) return plan;
  const transform = makeTransform(SRGB_PROFILE, ownColours.profile, DRIVER_CONVERSION);
  const stepsPerCode = depth === 16 ? 257 : 1;
  const steps = plan.steps.map((step) => {
    if (step.step !== 'flatten') return step;
    const { r, g, b, alpha } = step.background;
    if (Math.min(r, g, b) === 255) return step;
    const own = transform
      .convert([r / 255, g / 255, b / 255])
      .map((value) => Math.round(value * 255 * stepsPerCode) / stepsPerCode);
    return { ...step, background: { r: own[0]!, g: own[1]!, b: own[2]!, alpha } };
  });
  return { ...plan, steps };
}

/** On a copy: the picture stays as it was judged. */
function converterFrom({ toSrgb }: OwnColours): (raster: Raster) => Raster {
  return (raster) => convertToSrgb({ ...raster, data: raster.data.slice() }, toSrgb);
}
