import { middleOf, type PointMm, type PointPx, type RectMm, type RectPx } from '../geometry/rectangle.ts';
import type { Job, Turn } from './job.ts';

/** Clockwise turns as seen on the screen (x right, y down): where (1, 0) and (0, 1) go. */
const TURNS: Readonly<Record<Turn, readonly [number, number, number, number]>> = {
  0: [1, 0, 0, 1],
  90: [0, 1, -1, 0],
  180: [-1, 0, 0, -1],
  270: [0, -1, 1, 0],
};

/** Turns a point clockwise about the origin. */
export function turnPoint({ x, y }: PointPx, turn: Turn): PointPx {
  const [ax, ay, bx, by] = TURNS[turn];
  return { x: x * ax + y * bx, y: x * ay + y * by };
}

/** Width and height after the turn. */
export function turnSize<T extends { readonly width: number; readonly height: number }>(
  size: T,
  turn: Turn,
): { width: number; height: number } {
  return turn === 90 || turn === 270
    ? { width: size.height, height: size.width }
    : { width: size.width, height: size.height };
}

/** How pixels of the artwork as displayed lie on the blank: turned, scaled per axis of the blank, moved. */
export class ArtFrame {
  readonly #middlePx: PointPx;
  readonly #middleMm: PointMm;
  readonly #turn: Turn;
  readonly #back: Turn;
  readonly #scaleX: number;
  readonly #scaleY: number;

  /** The content box lies exactly on its placement. */
  constructor({ contentBoxPx, placementMm, turn }: Pick<Job, 'contentBoxPx' | 'placementMm' | 'turn'>) {
    const turned = turnSize(contentBoxPx, turn);
    this.#middlePx = middleOf(contentBoxPx);
    this.#middleMm = middleOf(placementMm);
    this.#turn = turn;
    this.#back = ((360 - turn) % 360) as Turn;
    this.#scaleX = placementMm.width / turned.width;
    this.#scaleY = placementMm.height / turned.height;
  }

  toMm({ x, y }: PointPx): PointMm {
    const point = turnPoint({ x: x - this.#middlePx.x, y: y - this.#middlePx.y }, this.#turn);
    return {
      x: this.#middleMm.x + point.x * this.#scaleX,
      y: this.#middleMm.y + point.y * this.#scaleY,
    };
  }

  toPx({ x, y }: PointMm): PointPx {
    const from = { x: (x - this.#middleMm.x) / this.#scaleX, y: (y - this.#middleMm.y) / this.#scaleY };
    const point = turnPoint(from, this.#back);
    return { x: this.#middlePx.x + point.x, y: this.#middlePx.y + point.y };
  }
}

export function frameOf(job: Pick<Job, 'contentBoxPx' | 'placementMm' | 'turn'>): ArtFrame {
  return new ArtFrame(job);
}

/** The rectangle on the blank that a rectangle of the artwork covers. */
export function rectToMm(frame: ArtFrame, rect: RectPx): RectMm {
  return spanOf(frame.toMm(rect), frame.toMm({ x: rect.x + rect.width, y: rect.y + rect.height }));
}

/** The rectangle of the artwork that lies on a rectangle of the blank; not clipped, not rounded. */
export function rectToPx(frame: ArtFrame, rect: RectMm): RectPx {
  return spanOf(frame.toPx(rect), frame.toPx({ x: rect.x + rect.width, y: rect.y + rect.height }));
}

function spanOf(a: PointMm, b: PointMm): RectMm {
  return {
    x: Math.min(a.x, b.x),
    y: Math.min(a.y, b.y),
    width: Math.abs(a.x - b.x),
    height: Math.abs(a.y - b.y),
  };
}
