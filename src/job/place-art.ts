import { BlankcheckError } from '../blankcheck-error.ts';
import { practiceLimit } from '../catalogue/practice.ts';
import { findLargestScale } from '../geometry/largest-scale.ts';
import { formatLength, formatSize, MM_PER_INCH } from '../geometry/length.ts';
import { middleOf, type PointPx, type RectPx } from '../geometry/rectangle.ts';
import { turnPoint, turnSize } from './art-frame.ts';
import type { BlankInHand, Job } from './job.ts';
import type { JobRequest } from './job-request.ts';
import { bleedBoxOf, hasConvexEdge, marginWithinSafe } from './lines.ts';

/** Steps of the search in outlines with inward corners: that of the walk along an edge. */
export const SEARCH_STEP_MM = practiceLimit('bleed-step').value;

/**
 * Where the art goes on the blank and how many of its pixels fall on an inch. `rimPx` are points that bound
 * the visible pixels: the hull's corners, or the rim itself where `hasConvexEdge` is false.
 * @throws BlankcheckError `blank-has-no-safe-area` when `inside` finds no room, `bad-length`.
 */
export function placeArt(
  request: JobRequest,
  blank: BlankInHand,
  contentBoxPx: RectPx,
  rimPx: readonly PointPx[],
): Job {
  const turn = request.turn ?? 0;
  const offsetMm = request.offsetMm ?? { x: 0, y: 0 };
  const turned = turnSize(contentBoxPx, turn);
  const sized = request.widthMm !== undefined || request.heightMm !== undefined;
  const fit = sized ? 'size' : (request.fit ?? 'inside');
  const scale = sized
    ? scaleToSize(request, turned)
    : fit === 'cover'
      ? scaleToCover(blank, turned)
      : scaleInside(blank, contentBoxPx, rimPx, turn);
  // A size that was asked for is kept to the last digit.
  const width = request.widthMm ?? turned.width * scale.x;
  const height = request.heightMm ?? turned.height * scale.y;
  const middle = middleOf(blank.edge.box);
  return {
    blank,
    contentBoxPx,
    turn,
    fit,
    offsetMm,
    placementMm: {
      x: middle.x + offsetMm.x - width / 2,
      y: middle.y + offsetMm.y - height / 2,
      width,
      height,
    },
    driverMirrors: request.printer?.driverMirrors ?? false,
    effectivePpi: { x: (turned.width * MM_PER_INCH) / width, y: (turned.height * MM_PER_INCH) / height },
    ppi: blank.ppi,
  };
}

/** mm per pixel of the artwork, in the axes of the blank. */
export interface Scale {
  readonly x: number;
  readonly y: number;
}

interface TurnedSize {
  readonly width: number;
  readonly height: number;
}

function scaleToSize({ widthMm, heightMm }: JobRequest, turned: TurnedSize): Scale {
  for (const [name, value] of [
    ['width', widthMm],
    ['height', heightMm],
  ] as const) {
    if (value !== undefined && !(value > 0 && Number.isFinite(value))) {
      throw new BlankcheckError('bad-length', `Expected a printed ${name} above 0 mm, received ${value}.`);
    }
  }
  const x = widthMm === undefined ? heightMm! / turned.height : widthMm / turned.width;
  const y = heightMm === undefined ? x : heightMm / turned.height;
  return { x, y };
}

/** mm per pixel at which the turned content box fills the box of the edge and its bleed. */
export function scaleToCover(blank: BlankInHand, turned: TurnedSize): Scale {
  const { width, height } = bleedBoxOf(blank);
  const scale = Math.max(width / turned.width, height / turned.height);
  return { x: scale, y: scale };
}

function scaleInside(
  blank: BlankInHand,
  contentBoxPx: RectPx,
  rimPx: readonly PointPx[],
  turn: Job['turn'],
): Scale {
  const middlePx = middleOf(contentBoxPx);
  const points = rimPx.map(({ x, y }) => turnPoint({ x: x - middlePx.x, y: y - middlePx.y }, turn));
  const { box } = blank.edge;
  const scale = findLargestScale(points, middleOf(box), (x, y) => marginWithinSafe(blank, x, y), {
    convex: hasConvexEdge(blank),
    reachMm: Math.hypot(box.width, box.height) / 2,
    stepMm: SEARCH_STEP_MM,
  });
  if (scale > 0) return { x: scale, y: scale };
  throw new BlankcheckError(
    'blank-has-no-safe-area',
    `No art in the middle of ${blank.id} lies inside its safe line: with the safe inset of ${formatLength(blank.safe.value)} (${blank.safe.from}) the middle of ${formatSize(box.width, box.height)} is outside it. Give a smaller --safe, or a size with --width and a place with --offset.`,
  );
}
