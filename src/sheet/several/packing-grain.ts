import type { RectMm } from '../../geometry/rectangle.ts';
import type { QuarterTurn } from '../../geometry/rigid-move.ts';
import type { Size } from '../packing/pack-item.ts';
import type { SizeMm } from '../paper.ts';
import type { SheetPiece } from './sheet-piece.ts';

/** The whole units in which a page is packed. */
export interface PackingGrain {
  readonly unitMm: number;
  /** Where counting begins on the page, and how far pieces reach. */
  readonly originMm: { readonly x: number; readonly y: number };
  /** What of the room may be lost to counting in whole units. */
  readonly originSlackMm: number;
  readonly room: Size;
  readonly gutter: number;
  /** What a piece takes up, the way it lies. */
  sizeOf(piece: SheetPiece, turn: Extract<QuarterTurn, 0 | 90>): Size;
}

/** A nanometre: sizes in mm, and in 64ths of an inch (396 875 of them), add up to a whole page exactly. */
const FINE_MM = 1e-6;

/**
 * Bleeds are packed at their exact size, so that what fills a page to the last tenth of a millimetre is seen to fit. Only
 * where pictures lie closer than they may be off by their whole pixels are the pictures themselves packed: none may cover
 * a pixel of another. A picture's edge is off by half a pixel for its place and a quarter for its size, twice.
 */
export function grainFor(roomMm: RectMm, gutterMm: number, pixelMm: number): PackingGrain {
  return gutterMm >= 1.5 * pixelMm ? fineGrain(roomMm, gutterMm) : pixelGrain(roomMm, gutterMm, pixelMm);
}

function fineGrain(roomMm: RectMm, gutterMm: number): PackingGrain {
  const whole = (mm: number) => Math.floor(mm / FINE_MM + ROUNDING);
  return {
    unitMm: FINE_MM,
    originMm: roomMm,
    originSlackMm: 0,
    room: { width: whole(roomMm.width), height: whole(roomMm.height) },
    gutter: whole(gutterMm),
    sizeOf: ({ bleedMm }, turn) =>
      lying({ width: whole(bleedMm.width), height: whole(bleedMm.height) }, turn),
  };
}

function pixelGrain({ x, y, width, height }: RectMm, gutterMm: number, pixelMm: number): PackingGrain {
  const left = Math.ceil(x / pixelMm - ROUNDING);
  const top = Math.ceil(y / pixelMm - ROUNDING);
  return {
    unitMm: pixelMm,
    originMm: { x: left * pixelMm, y: top * pixelMm },
    originSlackMm: 2 * pixelMm,
    room: {
      width: Math.floor((x + width) / pixelMm + ROUNDING) - left,
      height: Math.floor((y + height) / pixelMm + ROUNDING) - top,
    },
    // A picture may be half a pixel smaller than its bleed on each side: one more pixel makes up for it.
    gutter: gutterMm === 0 ? 0 : Math.ceil(gutterMm / pixelMm) + 1,
    sizeOf: ({ widthPx, heightPx }, turn) => lying({ width: widthPx, height: heightPx }, turn),
  };
}

function lying({ width, height }: SizeMm, turn: 0 | 90): Size {
  return turn === 0 ? { width, height } : { width: height, height: width };
}

/** What doubles lose. */
const ROUNDING = 1e-6;
