import { MM_PER_INCH } from '../geometry/length.ts';
import { middleOf, type RectPx } from '../geometry/rectangle.ts';
import { distanceInside } from '../geometry/signed-distance.ts';
import { cropRaster } from '../raster/crop.ts';
import { cutRaster, type DistancePx } from '../raster/cut.ts';
import { flattenRaster } from '../raster/flatten.ts';
import { mirrorRaster } from '../raster/mirror.ts';
import { padRaster, wholeOf } from '../raster/pad.ts';
import type { Raster } from '../raster/raster.ts';
import { toRgb8 } from '../raster/to-8-bit.ts';
import { turnRaster } from '../raster/turn.ts';
import type { PrintPlan, Step } from './step.ts';

/** A rectangle of a raster at another size. */
export type Resample = (
  raster: Raster,
  request: { readonly rectPx: RectPx; readonly widthPx: number; readonly heightPx: number },
) => Promise<Raster>;

export interface CarryOutOptions {
  readonly resample: Resample;
  readonly signal?: AbortSignal;
}

/**
 * The print-ready picture: each step of the plan on the result of the one before; 8-bit rgb, with alpha only where
 * the plan has no background. The artwork's raster is not changed.
 * @throws the signal's reason, between two steps
 */
export async function carryOut(raster: Raster, plan: PrintPlan, options: CarryOutOptions): Promise<Raster> {
  let work: Work = { raster, rectPx: wholeOf(raster), ours: false };
  for (const step of plan.steps) {
    options.signal?.throwIfAborted();
    work = await carryOutStep(work, step, options.resample);
  }
  return toRgb8(cropRaster(work.raster, work.rectPx));
}

/** What a step hands to the next. A crop only narrows the rectangle: the pixels it keeps are copied once, by the step after it. */
interface Work {
  readonly raster: Raster;
  readonly rectPx: RectPx;
  /** True once the canvas has been made: from then on steps may change it in place, which saves whole pictures of memory. */
  readonly ours: boolean;
}

async function carryOutStep({ raster, rectPx, ours }: Work, step: Step, resample: Resample): Promise<Work> {
  switch (step.step) {
    case 'crop': {
      const { x, y, width, height } = step.rectPx;
      return { raster, ours, rectPx: { x: rectPx.x + x, y: rectPx.y + y, width, height } };
    }
    case 'resize': {
      const { widthPx, heightPx } = step;
      return whole(await resample(raster, { rectPx, widthPx, heightPx }), false);
    }
    case 'turn':
      return whole(turnRaster(cropRaster(raster, rectPx), step.degrees), false);
    case 'pad':
      return whole(padRaster(raster, step, rectPx), true);
    case 'cut':
      return whole(cutRaster(raster, distanceFromBleedLine(step, raster), ours ? raster : undefined), true);
    case 'flatten':
      return whole(flattenRaster(raster, step.background, ours ? ownBytes(raster) : undefined), true);
    case 'mirror':
      return whole(mirrorRaster(raster, ours ? raster : undefined), true);
  }
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
