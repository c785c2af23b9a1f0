import { BlankcheckError } from '../../src/blankcheck-error.ts';
import { MM_PER_INCH } from '../../src/geometry/length.ts';
import type { PointPx, RectMm, RectPx } from '../../src/geometry/rectangle.ts';
import type { Shape } from '../../src/geometry/shape.ts';
import { turnSize } from '../../src/job/art-frame.ts';
import type { BlankInHand, Job } from '../../src/job/job.ts';
import type { Background } from '../../src/prepare/step.ts';

export const WHITE: Background = { r: 255, g: 255, b: 255, alpha: 1 };
export const CLEAR: Background = { r: 0, g: 0, b: 0, alpha: 0 };

/** A blank of this edge, bleed 3 mm, first surface. */
export function blankOf(edge: Shape, changes: Partial<BlankInHand> = {}): BlankInHand {
  const limit = (value: number) => ({ value, from: 'test' });
  return {
    id: 'test-blank',
    name: 'Blank of the tests',
    nominalMm: null,
    outline: edge,
    edge,
    holes: [],
    wrap: null,
    surface: 'first',
    bleed: limit(3),
    safe: limit(5),
    bevel: null,
    safeSides: 'all',
    resolution: { good: limit(300), acceptable: limit(220), stopBelow: limit(150) },
    smallestStroke: null,
    viewDistanceMm: 305,
    whiteBase: true,
    baseColour: { r: 255, g: 255, b: 255 },
    ppi: 300,
    ...changes,
  };
}

export function rectOf(width: number, height: number): Shape {
  return { kind: 'rect', box: { x: 0, y: 0, width, height } };
}

/** A job with the content box laid exactly on a placement. */
export function jobOf(
  blank: BlankInHand,
  contentBoxPx: RectPx,
  placementMm: RectMm,
  changes: Partial<Job> = {},
): Job {
  const turned = turnSize(contentBoxPx, changes.turn ?? 0);
  return {
    blank,
    contentBoxPx,
    turn: 0,
    fit: 'size',
    offsetMm: { x: 0, y: 0 },
    placementMm,
    copiesMm: [],
    facesMm: [],
    driverMirrors: false,
    effectivePpi: {
      x: (turned.width / placementMm.width) * MM_PER_INCH,
      y: (turned.height / placementMm.height) * MM_PER_INCH,
    },
    ppi: 300,
    ...changes,
  };
}

/** Corners of a rectangle of pixels: the hull of a picture that is visible all over. */
export function cornersOf({ x, y, width, height }: RectPx): PointPx[] {
  return [
    { x, y },
    { x: x + width, y },
    { x: x + width, y: y + height },
    { x, y: y + height },
  ];
}

/** The code of the error that a call throws. */
export function codeOf(call: () => unknown): string {
  try {
    call();
  } catch (error) {
    if (error instanceof BlankcheckError) return error.code;
    throw error;
  }
  return 'nothing thrown';
}
