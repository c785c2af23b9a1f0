import type { Drawing, InkColour } from '../geometry/drawing.ts';
import type { PointMm } from '../geometry/rectangle.ts';
import type { WrapInHand } from '../job/wrap-in-hand.ts';
import { letter } from '../lettering/letter.ts';
import { bodySizeOf, radiusAt, type View } from './draw-views.ts';

/** Where the views of a body stand in a row, mm; each body in the middle of its column, its rim at `topMm`. */
export interface ViewRow {
  readonly columnMm: number;
  readonly topMm: number;
  readonly heightMm: number;
}

const GRAY: InkColour = { r: 120, g: 120, b: 120 };
const BLACK: InkColour = { r: 0, g: 0, b: 0 };
const [LINE_MM, BORDER_MM] = [0.3, 4] as const;
/** A handle for the eye to know the sides by: shares of the body, no measure of any mug (own choice). */
const HANDLE = { reach: 0.34, height: 0.62, thickness: 0.09 } as const;

export function rowOf(wrap: WrapInHand, capitalsMm: number): ViewRow {
  const { heightMm, radiusMm } = bodySizeOf(wrap);
  const handle = wrap.wayRound === 'part' ? 2 * radiusMm * HANDLE.reach : 0;
  return {
    columnMm: 2 * radiusMm + 2 * handle + 2 * BORDER_MM,
    topMm: BORDER_MM,
    heightMm: heightMm + 2 * BORDER_MM + 3 * capitalsMm,
  };
}

/** Outlines of the bodies, their handles and what each view shows, over the row of views. */
export function setViews(wrap: WrapInHand, views: readonly View[], capitalsMm: number): Drawing {
  const row = rowOf(wrap, capitalsMm);
  const { heightMm } = bodySizeOf(wrap);
  return views.flatMap(({ name, turn }, column) => {
    const middle = (column + 0.5) * row.columnMm;
    const at = (x: number, down: number): PointMm => ({ x: middle + x, y: row.topMm + down });
    const [rim, foot] = [radiusAt(wrap, 0), radiusAt(wrap, heightMm)];
    const outline = closed([at(-rim, 0), at(rim, 0), at(foot, heightMm), at(-foot, heightMm)]);
    const { path } = letter(name, {
      capHeightMm: capitalsMm,
      at: { x: middle, y: row.topMm + heightMm + 2.2 * capitalsMm },
      anchor: 'middle',
      maxWidthMm: row.columnMm - 1,
    });
    const handle = wrap.wayRound === 'part' ? handleIn(wrap, turn, at) : [];
    return [...outline, ...handle, { kind: 'path', path, colour: BLACK } as const];
  });
}

/** At the side, or in front of the body where the view is from its handle. */
function handleIn(wrap: WrapInHand, turn: number, at: (x: number, down: number) => PointMm): Drawing {
  const { heightMm, radiusMm } = bodySizeOf(wrap);
  const [reach, tall] = [2 * radiusMm * HANDLE.reach, heightMm * HANDLE.height];
  const thick = 2 * radiusMm * HANDLE.thickness;
  const middle = heightMm / 2;
  if (turn === 1 / 2) return [];
  if (turn === 0) {
    const half = thick / 2;
    return closed([
      at(-half, middle - tall / 2),
      at(half, middle - tall / 2),
      at(half, middle + tall / 2),
      at(-half, middle + tall / 2),
    ]);
  }
  // The handle is a quarter turn beyond a view of the right end of the paper, so on its right.
  const side = turn > 1 / 2 ? 1 : -1;
  return [0, thick].flatMap((inset) => {
    const bow = Array.from({ length: 25 }, (_, i) => {
      const angle = -Math.PI / 2 + (i / 24) * Math.PI;
      const down = middle + (tall / 2 - inset) * Math.sin(angle);
      return at(side * (radiusAt(wrap, down) + (reach - inset) * Math.cos(angle)), down);
    });
    return open(bow);
  });
}

function closed(points: readonly PointMm[]): Drawing {
  return open([...points, points[0]!]);
}

function open(points: readonly PointMm[]): Drawing {
  return points
    .slice(1)
    .map((to, i) => ({ kind: 'line', from: points[i]!, to, widthMm: LINE_MM, colour: GRAY }) as const);
}
