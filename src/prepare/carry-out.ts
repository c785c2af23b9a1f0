import { MM_PER_INCH } from '../geometry/length.ts';
import { middleOf, type RectPx } from '../geometry/rectangle.ts';
import { distanceInside } from '../geometry/signed-distance.ts';
import { bendRaster } from '../raster/bend.ts';
import { cropRaster } from '../raster/crop.ts';
import { cutRaster, type DistancePx } from '../raster/cut.ts';
import { flattenRaster } from '../raster/flatten.ts';
import { flattenDeep } from '../raster/flatten-deep.ts';
import { layBeneath } from '../raster/lay-beneath.ts';
import { layFlat } from '../raster/lay-flat.ts';
import { mirrorRaster } from '../raster/mirror.ts';
import { padRaster, wholeOf } from '../raster/pad.ts';
import type { Raster } from '../raster/raster.ts';
import { toRgb8 } from '../raster/to-8-bit.ts';
import { turnRaster } from '../raster/turn.ts';
import { bendOf } from './bend-step.ts';
import type { PrintPlan, Step } from './step.ts';

/** A rectangle of a raster at another size. */
export type Resample = (
  raster: Raster,
  request: { readonly rectPx: RectPx; readonly widthPx: number; readonly heightPx: number },
) => Promise<Raster>;

export interface CarryOutOptions {
  readonly resample: Resample;
  /** Brings colours to sRGB, in the raster's own memory; needed where the plan has a `convert`. */
  readonly convert?: (raster: Raster) => Raster;
  /** Keeps 16-bit rgb art at 16 bits: it goes on into a conversion. Always so before `convertForPrinter`. */
  readonly keepDepth?: boolean;
  /** Brings the finished rgb canvas, of 8 or 16 bits, to a printer's colours; needed where the plan has a `convert-for-printer`. */
  readonly convertForPrinter?: (raster: Raster) => Raster;
  readonly signal?: AbortSignal;
}

/** Steps that bring the art to its print size; from then on it is in the axes of the blank. */
const SCALING: ReadonlySet<Step['step']> = new Set(['crop', 'resize', 'turn']);

/**
 * The printed part of the art at its print size, in its own colours, depth and alpha: the picture that is judged and
 * then composed. The artwork's raster is not changed. @throws the signal's reason, between two steps
 */
export async function scaleArt(raster: Raster, plan: PrintPlan, options: CarryOutOptions): Promise<Raster> {
  const { raster: scaled, rectPx } = await fold(
    raster,
    plan.steps.filter(({ step }) => SCALING.has(step)),
    options,
  );
  return cropRaster(scaled, rectPx);
}

/**
 * The print-ready picture of scaled art: 8-bit rgb (16 where the depth is kept) or, for such a printer, cmyk; with
 * alpha only where the plan has no background. `scaled` is not changed, unless the plan converts its colours to sRGB.
 */
export async function composePrint(
  scaled: Raster,
  plan: PrintPlan,
  options: CarryOutOptions,
): Promise<Raster> {
  const steps = plan.steps.filter(({ step }) => !SCALING.has(step) && step !== 'mend');
  // Pixel by pixel, so it does not matter that the canvas has been mirrored by then.
  const forPrinter = steps.some(({ step }) => step === 'convert-for-printer');
  const composed = await composeCanvas(
    scaled,
    steps.filter(({ step }) => step !== 'convert-for-printer'),
    { ...options, keepDepth: forPrinter || options.keepDepth === true },
  );
  if (!forPrinter) return composed;
  if (!options.convertForPrinter)
    throw new Error('Expected a way to the colours of the printer, received none.');
  options.signal?.throwIfAborted();
  return options.convertForPrinter(composed);
}

async function composeCanvas(
  scaled: Raster,
  steps: readonly Step[],
  options: CarryOutOptions,
): Promise<Raster> {
  const atOnce = composeAtOnce(scaled, steps);
  if (atOnce) return atOnce;
  const { raster, rectPx } = await fold(scaled, steps, options);
  const canvas = cropRaster(raster, rectPx);
  return staysDeep(canvas, options) ? canvas : toRgb8(canvas);
}

function staysDeep({ depth, model }: Raster, { keepDepth = false }: CarryOutOptions): boolean {
  return keepDepth && depth === 16 && model === 'rgb';
}

/** The usual way, pad, flatten and perhaps mirror, in one pass where that can be; null where it cannot. */
function composeAtOnce(scaled: Raster, steps: readonly Step[]): Raster | null {
  const [pad, flatten, mirror, ...more] = steps;
  if (pad?.step !== 'pad' || pad.copiesX || flatten?.step !== 'flatten' || more.length > 0) return null;
  if (mirror !== undefined && mirror.step !== 'mirror') return null;
  return layFlat(scaled, pad, flatten.background, mirror !== undefined);
}

async function fold(raster: Raster, steps: readonly Step[], options: CarryOutOptions): Promise<Work> {
  let work: Work = { raster, rectPx: wholeOf(raster), ours: false };
  for (const step of steps) {
    options.signal?.throwIfAborted();
    work = await carryOutStep(work, step, options);
  }
  return work;
}

/** What a step hands to the next. A crop only narrows the rectangle: the pixels it keeps are copied once, by the step after it. */
interface Work {
  readonly raster: Raster;
  readonly rectPx: RectPx;
  /** True once the canvas has been made: from then on steps may change it in place, which saves whole pictures of memory. */
  readonly ours: boolean;
}

async function carryOutStep(
  { raster, rectPx, ours }: Work,
  step: Step,
  options: CarryOutOptions,
): Promise<Work> {
  switch (step.step) {
    case 'mend':
      return { raster, rectPx, ours };
    case 'crop': {
      const { x, y, width, height } = step.rectPx;
      return { raster, ours, rectPx: { x: rectPx.x + x, y: rectPx.y + y, width, height } };
    }
    case 'resize': {
      const { widthPx, heightPx } = step;
      return whole(await options.resample(raster, { rectPx, widthPx, heightPx }), false);
    }
    case 'turn':
      return whole(turnRaster(cropRaster(raster, rectPx), step.degrees), false);
    case 'convert':
      if (!options.convert) throw new Error(`Expected a way from ${step.from} to sRGB, received none.`);
      return whole(options.convert(cropRaster(raster, rectPx)), ours);
    case 'pad':
      return whole(layCopies(padRaster(raster, step, rectPx), cropRaster(raster, rectPx), step), true);
    case 'bend':
      return whole(bendRaster(raster, bendOf(step)), true);
    case 'cut':
      return whole(cutRaster(raster, distanceFromBleedLine(step, raster), ours ? raster : undefined), true);
    case 'flatten':
      if (staysDeep(raster, options)) return whole(flattenDeep(raster, step.background), true);
      return whole(flattenRaster(raster, step.background, ours ? ownBytes(raster) : undefined), true);
    case 'convert-for-printer':
      throw new Error('Expected the conversion for a printer to come last.');
    case 'mirror':
      return whole(mirrorRaster(raster, ours ? raster : undefined), true);
  }
}

/** The canvas with the art repeated on it, changed in place: repeats lie below what is there already. */
function layCopies(canvas: Raster, art: Raster, { copiesX = [], y }: Extract<Step, { step: 'pad' }>): Raster {
  for (const x of copiesX) layBeneath(canvas, art, x, y);
  return canvas;
}

function whole(raster: Raster, ours: boolean): Work {
  return { raster, rectPx: wholeOf(raster), ours };
}

/** The samples themselves where the flattened picture may be written over them. */
function ownBytes({ data, model, hasAlpha }: Raster): Uint8Array | undefined {
  return data instanceof Uint8Array && model === 'rgb' && hasAlpha ? data : undefined;
}

/** The middle of the canvas is the middle of the edge's box. */
function distanceFromBleedLine(
  { edge, bleedMm, ppi }: Extract<Step, { step: 'cut' }>,
  { widthPx, heightPx }: Raster,
): DistancePx {
  const middle = middleOf(edge.box);
  const mmPerPx = MM_PER_INCH / ppi;
  return (x, y) => {
    const xMm = middle.x + (x - widthPx / 2) * mmPerPx;
    const yMm = middle.y + (y - heightPx / 2) * mmPerPx;
    return (distanceInside(edge, xMm, yMm) + bleedMm) / mmPerPx;
  };
}
