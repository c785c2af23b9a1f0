import { MM_PER_INCH } from '../geometry/length.ts';
import { middleOf, type RectPx } from '../geometry/rectangle.ts';
import { distanceInside } from '../geometry/signed-distance.ts';
import { bendRaster } from '../raster/bend.ts';
import { cropRaster } from '../raster/crop.ts';
import { cutRaster, type DistancePx } from '../raster/cut.ts';
import { flattenRaster } from '../raster/flatten.ts';
import { flattenDeep } from '../raster/flatten-deep.ts';
import { layBeneath } from '../raster/lay-beneath.ts';
import { mirrorRaster } from '../raster/mirror.ts';
import { padRaster, wholeOf } from '../raster/pad.ts';
import type { Raster } from '../raster/raster.ts';
import { turnRaster } from '../raster/turn.ts';
import { bendOf } from './bend-step.ts';
import type { Step } from './step.ts';

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

/** Art of 16 bits that goes on into a conversion. */
export function staysDeep({ depth, model }: Raster, { keepDepth = false }: CarryOutOptions): boolean {
  return keepDepth && depth === 16 && model === 'rgb';
}

/** What a step hands to the next. A crop only narrows the rectangle: the pixels it keeps are copied once, by the step after it. */
export interface Work {
  readonly raster: Raster;
  readonly rectPx: RectPx;
  /** True once the canvas has been made: from then on steps may change it in place, which saves whole pictures of memory. */
  readonly ours: boolean;
}

export async function carryOutStep(
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
