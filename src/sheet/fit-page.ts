import type { RectMm } from '../geometry/rectangle.ts';
import type { Orientation, PageMargins, Paper, SizeMm } from './paper.ts';

/** A page held one way. */
export interface Page {
  readonly orientation: Orientation;
  readonly sizeMm: SizeMm;
  /** From the top left of the page. No room is left where a side is not above 0. */
  readonly printableMm: RectMm;
}

/** A nanometre: what doubles lose must not cost a piece its page. */
const TOUCH_MM = 1e-6;

/** The page of a sheet held this way; of a roll, as long as `neededMm` and its margins along it. */
export function pageOf(
  { widthMm, heightMm }: Paper,
  margins: PageMargins,
  orientation: Orientation,
  neededMm: SizeMm,
): Page {
  const upright = orientation === 'portrait';
  const { left, right, top, bottom } = margins[orientation];
  const alongMm = heightMm ?? (upright ? neededMm.height + top + bottom : neededMm.width + left + right);
  const sizeMm = upright ? { width: widthMm, height: alongMm } : { width: alongMm, height: widthMm };
  const printableMm = {
    x: left,
    y: top,
    width: sizeMm.width - left - right,
    height: sizeMm.height - top - bottom,
  };
  return { orientation, sizeMm, printableMm };
}

/**
 * The page that takes something of this size without scaling or turning it; null where none does. Of a sheet that can be
 * held either way, the one that leaves more room at the narrower side, for marks; of a roll, the shorter; else upright.
 */
export function fitPage(neededMm: SizeMm, paper: Paper, margins: PageMargins): Page | null {
  const [portrait, landscape] = (['portrait', 'landscape'] as const).map((orientation) => {
    const page = pageOf(paper, margins, orientation, neededMm);
    return roomBeside(neededMm, page) >= -TOUCH_MM ? page : null;
  });
  if (!portrait || !landscape) return portrait ?? landscape ?? null;
  const better =
    paper.heightMm === null
      ? landscape.sizeMm.width < portrait.sizeMm.height
      : roomBeside(neededMm, landscape) > roomBeside(neededMm, portrait) + TOUCH_MM;
  return better ? landscape : portrait;
}

/** A page of a roll, cut longer at its end: room for marks before and after a piece in its middle. A sheet stays. */
export function cutLonger(page: Page, { heightMm }: Paper, byMm: number): Page {
  if (heightMm !== null) return page;
  const along = page.orientation === 'portrait' ? 'height' : 'width';
  const longer = <T extends SizeMm>(size: T): T => ({ ...size, [along]: size[along] + byMm });
  return { ...page, sizeMm: longer(page.sizeMm), printableMm: longer(page.printableMm) };
}

/** What the tighter of the two axes leaves; negative where it does not fit. */
function roomBeside({ width, height }: SizeMm, { printableMm }: Page): number {
  return Math.min(printableMm.width - width, printableMm.height - height);
}

/** Bare sides that leave nothing to print on, whichever way the paper is held. */
export function leavesNoRoom(paper: Paper, margins: PageMargins): boolean {
  const nothing = { width: 1, height: 1 };
  return (['portrait', 'landscape'] as const).every((orientation) => {
    const { printableMm } = pageOf(paper, margins, orientation, nothing);
    return printableMm.width <= 0 || printableMm.height <= 0;
  });
}
