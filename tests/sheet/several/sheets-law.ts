import { expect } from 'vitest';
import type { RectMm } from '../../../src/geometry/rectangle.ts';
import { distanceBetween } from '../../../src/sheet/marks/distance-between.ts';
import type { SheetsRequest } from '../../../src/sheet/several/page-ways.ts';
import type { SheetsPlan } from '../../../src/sheet/several/plan-sheets.ts';
import type { SheetPiece } from '../../../src/sheet/several/sheet-piece.ts';
import { equalMargins } from '../equal-margins.ts';

const PPI = 72;
export const PIXEL_MM = 25.4 / PPI;
export const A4: SheetsRequest = {
  paper: { id: 'a4', widthMm: 210, heightMm: 297 },
  margins: equalMargins({ left: 6.35, right: 6.35, top: 6.35, bottom: 6.35 }),
  ppi: PPI,
  gutterMm: 3,
  platenMm: null,
  scaleCorrection: { scan: 1, feed: 1 },
  longestMm: 5000,
};
export const PLAIN = { driverMirrors: false } as const;

export function pieceOf(widthMm: number, heightMm: number, more: Partial<SheetPiece> = {}): SheetPiece {
  const outlineMm = { x: 0, y: 0, width: widthMm, height: heightMm };
  const bleedMm = { x: -3, y: -3, width: widthMm + 6, height: heightMm + 6 };
  return {
    outlineMm,
    bleedMm,
    printedMm: bleedMm,
    widthPx: Math.round(bleedMm.width / PIXEL_MM),
    heightPx: Math.round(bleedMm.height / PIXEL_MM),
    mirrored: true,
    label: ['basil.png'],
    mayTurn: false,
    group: 0,
    ...more,
  };
}
export const copies = (count: number, piece: SheetPiece) =>
  Array.from({ length: count }, (_, group) => ({ ...piece, group }));

function within(inner: RectMm, outer: RectMm, slackMm: number): boolean {
  return (
    inner.x >= outer.x - slackMm &&
    inner.y >= outer.y - slackMm &&
    inner.x + inner.width <= outer.x + outer.width + slackMm &&
    inner.y + inner.height <= outer.y + outer.height + slackMm
  );
}

function shareNoPixel(one: RectMm, other: RectMm): boolean {
  return (
    one.x + one.width <= other.x ||
    other.x + other.width <= one.x ||
    one.y + one.height <= other.y ||
    other.y + other.height <= one.y
  );
}

/**
 * Every piece once, within the printable part, a gutter from all others, in pixels of its own, turned only where it may be,
 * on one page with its group, within the platen.
 */
export function expectLawful(
  plan: SheetsPlan,
  pieces: readonly SheetPiece[],
  request: SheetsRequest,
  driverMirrors: boolean,
): void {
  expect(plan.leftOut).toEqual([]);
  expect(plan.sheets.flatMap((sheet) => sheet.pieces).sort((a, b) => a - b)).toEqual([...pieces.keys()]);
  const sheetOf = new Map<number, number>();
  for (const [number, { page, pieces: lying }] of plan.sheets.entries()) {
    const bleeds = page.pieces.map(({ bleedMm }) => bleedMm);
    const pictures = page.pieces.map(({ xPx, yPx, turn }, at) => {
      const { widthPx, heightPx } = pieces[lying[at]!]!;
      const [width, height] = turn === 90 ? [heightPx, widthPx] : [widthPx, heightPx];
      return { x: xPx, y: yPx, width, height };
    });
    for (const [at, one] of pictures.entries())
      for (const other of pictures.slice(at + 1)) expect(shareNoPixel(one, other)).toBe(true);
    for (const [at, place] of page.pieces.entries()) {
      const own = pieces[lying[at]!]!;
      sheetOf.set(lying[at]!, number);
      if (!own.mayTurn) expect(place.turn).toBe(0);
      const turned = place.turn === 90;
      expect(place.bleedMm.width).toBeCloseTo(turned ? own.bleedMm.height : own.bleedMm.width, 9);
      // A picture is its bleed rounded to whole pixels: half a pixel at most.
      expect(within(place.bleedMm, page.printableMm, PIXEL_MM / 2)).toBe(true);
      const widthPx = turned ? own.heightPx : own.widthPx;
      const middlePx = driverMirrors ? page.widthPx - place.xPx - widthPx / 2 : place.xPx + widthPx / 2;
      const off = place.bleedMm.x + place.bleedMm.width / 2 - middlePx * PIXEL_MM;
      // Exact in mm; its picture has whole pixels, and is never nearer to another than these.
      expect(Math.abs(off)).toBeLessThanOrEqual(PIXEL_MM);
      for (const other of bleeds.slice(at + 1))
        expect(distanceBetween(place.bleedMm, other)).toBeGreaterThanOrEqual(
          request.gutterMm === 0 ? 0 : request.gutterMm - 2e-6,
        );
    }
    if (request.platenMm) {
      const left = Math.min(...bleeds.map(({ x }) => x));
      const right = Math.max(...bleeds.map(({ x, width }) => x + width));
      const top = Math.min(...bleeds.map(({ y }) => y));
      const foot = Math.max(...bleeds.map(({ y, height }) => y + height));
      const [short, long] = [Math.min(right - left, foot - top), Math.max(right - left, foot - top)];
      expect(short).toBeLessThanOrEqual(Math.min(request.platenMm.width, request.platenMm.height) + PIXEL_MM);
      expect(long).toBeLessThanOrEqual(Math.max(request.platenMm.width, request.platenMm.height) + PIXEL_MM);
    }
  }
  for (const [at, { group }] of pieces.entries())
    if (!plan.apart.includes(group))
      expect(sheetOf.get(at)).toBe(sheetOf.get(pieces.findIndex((one) => one.group === group)));
}
