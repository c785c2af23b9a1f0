import type { RectMm } from '../geometry/rectangle.ts';
import type { Printer } from './printer.ts';

/** What a printer makes of a page: the part it prints, and the factors by which to draw so that lengths come out right. */
export interface PageLimits {
  /** From the top left of the page, as it is looked at. */
  readonly printableMm: RectMm;
  /** Scale what is drawn by these about the middle of the page; the page itself keeps its size. */
  readonly scaleCorrection: { readonly x: number; readonly y: number };
}

/**
 * For a page of this size, portrait or landscape. A portrait page goes in by its top edge. A landscape page is turned by the
 * driver, to which side is not known: both its sides keep the larger of lead and trail, top and bottom the larger of
 * left and right, and its x runs along the feed. No room is left where the printable size is not above 0.
 */
export function findPageLimits(
  { marginsMm, scaleCorrection }: Pick<Printer, 'marginsMm' | 'scaleCorrection'>,
  pageMm: { readonly width: number; readonly height: number },
): PageLimits {
  const { left, right, lead, trail } = marginsMm;
  const { scan, feed } = scaleCorrection;
  const landscape = pageMm.width > pageMm.height;
  const ends = Math.max(lead, trail);
  const sides = Math.max(left, right);
  const [l, r, t, b] = landscape ? [ends, ends, sides, sides] : [left, right, lead, trail];
  return {
    printableMm: { x: l, y: t, width: pageMm.width - l - r, height: pageMm.height - t - b },
    scaleCorrection: landscape ? { x: feed, y: scan } : { x: scan, y: feed },
  };
}
