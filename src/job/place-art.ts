import { BlankcheckError } from '../blankcheck-error.ts';
import { practiceLimit } from '../catalogue/practice.ts';
import { findLargestScale } from '../geometry/largest-scale.ts';
import { formatLength, formatSize, MM_PER_INCH } from '../geometry/length.ts';
import { middleOf, type PointMm, type PointPx, type RectMm, type RectPx } from '../geometry/rectangle.ts';
import { turnPoint, turnSize } from './art-frame.ts';
import type { BlankInHand, Job } from './job.ts';
import type { JobRequest } from './job-request.ts';
import { bleedBoxOf, hasConvexEdge, marginWithinSafe } from './lines.ts';
import { findWrapPlaces, MEANT_TO_GO_ROUND, type WrapPlaces } from './wrap-places.ts';

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
  const places = findPlaces(request, blank);
  const asked = withWidthRound(request, places);
  const sized = asked.widthMm !== undefined || asked.heightMm !== undefined;
  const fit = sized ? 'size' : (request.fit ?? 'inside');
  const middle = { ...middleOf(blank.edge.box), ...(places && { x: places.middleMm }) };
  const scale = sized
    ? scaleToSize(asked, turned)
    : fit === 'cover'
      ? scaleToCover(blank, turned)
      : scaleInside(blank, contentBoxPx, rimPx, turn, middle, places?.roomMm ?? Infinity);
  // A size that was asked for is kept to the last digit.
  const width = asked.widthMm ?? turned.width * scale.x;
  const height = asked.heightMm ?? turned.height * scale.y;
  const placementMm = {
    x: middle.x + offsetMm.x - width / 2,
    y: middle.y + offsetMm.y - height / 2,
    width,
    height,
  };
  return {
    blank,
    contentBoxPx,
    turn,
    fit,
    offsetMm,
    placementMm,
    copiesMm: places?.copiesMm ?? [],
    facesMm: places ? places.facesMm : middleFace(blank, placementMm),
    driverMirrors: request.printer?.driverMirrors ?? false,
    effectivePpi: {
      x: (turned.width * MM_PER_INCH) / (width * widestShare(blank, placementMm)),
      y: (turned.height * MM_PER_INCH) / height,
    },
    ppi: blank.ppi,
  };
}

function findPlaces(request: JobRequest, blank: BlankInHand): WrapPlaces | null {
  if (request.wrap === undefined) {
    if (request.hand !== undefined)
      throw new BlankcheckError('bad-option', '--hand goes with --wrap one-face, which was not given.');
    return null;
  }
  if (request.fit === 'cover')
    throw new BlankcheckError(
      'bad-option',
      '--fit cover fills the whole paper, and --wrap says where on it the art goes: give one of the two.',
    );
  return findWrapPlaces(blank, request.wrap, request.hand);
}

/** Art that nobody asked to go round is looked at from the middle of the paper, unless it is so wide that it goes round all the same. */
function middleFace({ wrap, edge }: BlankInHand, { width }: RectMm): readonly number[] {
  if (!wrap) return [];
  const { strip, onceRoundMm } = wrap.development;
  return width < MEANT_TO_GO_ROUND * Math.min(strip.widthMm, onceRoundMm) ? [middleOf(edge.box).x] : [];
}

/** Art that goes round is as wide as the way round, where no other width was asked for. */
function withWidthRound(request: JobRequest, places: WrapPlaces | null): JobRequest {
  return places?.widthMm && request.widthMm === undefined ? { ...request, widthMm: places.widthMm } : request;
}

/** The widest circumference that the art is printed on against that at mid height: there its pixels are fewest to the inch. */
function widestShare({ wrap, edge }: BlankInHand, { y, height }: RectMm): number {
  if (!wrap) return 1;
  const { band, development } = wrap;
  const slant = edge.box.height;
  const at = (down: number) => {
    const share = Math.min(Math.max(down / slant, 0), 1);
    return band.topDiameterMm + (band.bottomDiameterMm - band.topDiameterMm) * share;
  };
  return (Math.PI * Math.max(at(y), at(y + height))) / development.onceRoundMm;
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
  middle: PointMm,
  roomMm: number,
): Scale {
  const middlePx = middleOf(contentBoxPx);
  const points = rimPx.map(({ x, y }) => turnPoint({ x: x - middlePx.x, y: y - middlePx.y }, turn));
  const { box } = blank.edge;
  const margin = (x: number, y: number) =>
    Math.min(marginWithinSafe(blank, x, y), roomMm / 2 - Math.abs(x - middle.x));
  const scale = findLargestScale(points, middle, margin, {
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
