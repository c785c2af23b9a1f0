import { cropRaster } from '../raster/crop.ts';
import { layFlat } from '../raster/lay-flat.ts';
import { wholeOf } from '../raster/pad.ts';
import type { Raster } from '../raster/raster.ts';
import { toRgb8 } from '../raster/to-8-bit.ts';
import { type CarryOutOptions, carryOutStep, staysDeep, type Work } from './carry-out-step.ts';
import type { PrintPlan, Step } from './step.ts';

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
