import type { PrinterConversion } from '../conditions/printer-conversion.ts';
import { formatSize, MM_PER_INCH } from '../geometry/length.ts';
import type { PointPx, RectPx } from '../geometry/rectangle.ts';
import { frameOf, turnSize } from '../job/art-frame.ts';
import type { Job } from '../job/job.ts';
import { marginWithinBleed, TOUCH_MM } from '../job/lines.ts';
import { bendStepOf } from './bend-step.ts';
import { canvasOf, checkPixels } from './canvas.ts';
import { placeOnCanvas } from './place-on-canvas.ts';
import type { Background, PrintPlan, Step } from './step.ts';

export interface PlanOptions {
  /** Points that bound the visible pixels, in the artwork as displayed: whether any lies beyond the bleed line decides on the cut. */
  readonly rimPx: readonly PointPx[];
  readonly background: Background;
  /** Mends that were carried out on the art before it was placed, in their order. */
  readonly mends?: readonly string[];
  /** Name of the art's colours where they are not sRGB. */
  readonly coloursFrom?: string;
  /** The file is brought to the colours of a printer, and not to sRGB. */
  readonly conversion?: PrinterConversion;
  /** The art's samples are that printer's already: converted once more they would be spoilt. */
  readonly isForPrinter?: boolean;
}

/**
 * The steps from the artwork as displayed to its print-ready picture, computed without touching a pixel.
 * The picture is resampled before it is turned, which is the same and costs less; its canvas is mirrored last.
 * @throws BlankcheckError `print-too-large`
 */
export function planPrint(
  job: Job,
  { rimPx, background, mends = [], coloursFrom, conversion, isForPrinter = false }: PlanOptions,
): PrintPlan {
  const { blank, turn, ppi } = job;
  const canvas = canvasOf(job);
  const { rectPx, onCanvasPx } = placeOnCanvas(job, canvas);
  const scaled = turnSize(onCanvasPx, turn);
  checkPixels(
    scaled.width,
    scaled.height,
    `art enlarged to ${formatSize(job.placementMm.width, job.placementMm.height)}`,
  );
  // Counted once: a driver that mirrors undoes what the file brings along, and a file for it is mirrored the other way.
  const mirrored = (blank.surface === 'first') !== job.driverMirrors;
  const resized = scaled.width !== rectPx.width || scaled.height !== rectPx.height;
  const { widthPx, heightPx } = canvas;
  const bend = bendStepOf(job);
  const copiesX = placeCopies(job, onCanvasPx);
  const steps: readonly (Step | false | undefined)[] = [
    ...mends.map((mend) => ({ step: 'mend', mend }) as const),
    { step: 'crop', rectPx },
    resized && { step: 'resize', widthPx: scaled.width, heightPx: scaled.height },
    turn !== 0 && { step: 'turn', degrees: turn },
    coloursFrom !== undefined && !conversion && { step: 'convert', from: coloursFrom },
    {
      step: 'pad',
      widthPx,
      heightPx,
      x: onCanvasPx.x,
      y: onCanvasPx.y,
      ...(copiesX.length > 0 && { copiesX }),
    },
    reachesBeyondBleed(job, rimPx) && { step: 'cut', edge: blank.edge, bleedMm: blank.bleed.value, ppi },
    bend?.step,
    background.alpha === 1 && { step: 'flatten', background },
    conversion && !isForPrinter && tellConversion(conversion),
    mirrored && { step: 'mirror' },
  ];
  return {
    steps: steps.filter((step) => step !== false && step !== undefined),
    ...sizeOf(bend?.step ?? canvas),
    ...(bend?.sizeMm ?? { widthMm: canvas.widthMm, heightMm: canvas.heightMm }),
    ppi,
    mirrored,
  };
}

function sizeOf({ widthPx, heightPx }: Pick<PrintPlan, 'widthPx' | 'heightPx'>) {
  return { widthPx, heightPx };
}

/** Copies that follow on each other do so without a gap, whatever whole pixels make of the width. */
function placeCopies({ copiesMm, ppi }: Job, { x, width }: RectPx): readonly number[] {
  return copiesMm.map((mm) => {
    const px = (mm / MM_PER_INCH) * ppi;
    const touches = Math.abs(Math.abs(px) - width) < 1;
    return x + Math.round(touches ? Math.sign(px) * width : px);
  });
}

function tellConversion({ name, profile, intent, blackPointCompensation }: PrinterConversion): Step {
  const space = profile.space === 'cmyk' ? 'cmyk' : 'rgb';
  // The absolute intent has no black point to compensate.
  const compensates = blackPointCompensation && intent !== 'absolute';
  return { step: 'convert-for-printer', profile: name, space, intent, blackPointCompensation: compensates };
}

function reachesBeyondBleed(job: Job, rimPx: readonly PointPx[]): boolean {
  const frame = frameOf(job);
  return rimPx.some((point) => {
    const { x, y } = frame.toMm(point);
    return marginWithinBleed(job.blank, x, y) < -TOUCH_MM;
  });
}
