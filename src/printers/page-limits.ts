import type { PrinterMargins } from '../catalogue/printer-record.ts';
import type { RectMm } from '../geometry/rectangle.ts';
import { defaultMarginsMm } from './default-margins.ts';
import type { Printer } from './printer.ts';

/** What a printer makes of a page: the part it prints, and the factors by which to draw so that lengths come out right. */
export interface PageLimits {
  /** From the top left of the page, as it is looked at. */
  readonly printableMm: RectMm;
  /** Scale what is drawn by these about the middle of the page; the page itself keeps its size. */
  readonly scaleCorrection: { readonly x: number; readonly y: number };
}

/**
 * For a page of this size, portrait or landscape; a landscape page's x runs along the feed. No room is left where the
 * printable size is not above 0.
 */
export function findPageLimits(
  { marginsMm, scaleCorrection }: Pick<Printer, 'marginsMm' | 'scaleCorrection'>,
  pageMm: { readonly width: number; readonly height: number },
): PageLimits {
  const { scan, feed } = scaleCorrection;
  const held = pageMm.width > pageMm.height ? 'landscape' : 'portrait';
  const { left, right, top, bottom } = findPageMargins(marginsMm)[held];
  return {
    printableMm: {
      x: left,
      y: top,
      width: pageMm.width - left - right,
      height: pageMm.height - top - bottom,
    },
    scaleCorrection: held === 'landscape' ? { x: feed, y: scan } : { x: scan, y: feed },
  };
}

interface SidesMm {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/**
 * What stays bare along each side of a page, as it is looked at, by how it is held; of an unknown printer by default.
 * A portrait page goes in by its top edge. A landscape page is turned by the driver, to which side is not known: both its
 * sides keep the larger of lead and trail, top and bottom the larger of left and right.
 */
export function findPageMargins(marginsMm: PrinterMargins = defaultMarginsMm()): {
  readonly portrait: SidesMm;
  readonly landscape: SidesMm;
} {
  const { left, right, lead, trail } = marginsMm;
  const ends = Math.max(lead, trail);
  const sides = Math.max(left, right);
  return {
    portrait: { left, right, top: lead, bottom: trail },
    landscape: { left: ends, right: ends, top: sides, bottom: sides },
  };
}
