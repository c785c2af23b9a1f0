import { findBounds, type PointMm, type RectMm } from '../geometry/rectangle.ts';
import {
  boxAround,
  boxOfSector,
  fromStrip,
  growSector,
  middleRadiusOf,
  type Sector,
} from '../geometry/sector.ts';
import type { BlankInHand } from './job.ts';
import { bleedBoxOf } from './lines.ts';

/** Boxes of the paper that is printed and cut, in its own frame: origin top left of the box of its outline, seen from the front. */
export interface PaperBoxes {
  readonly outlineMm: RectMm;
  readonly bleedMm: RectMm;
}

/** All of a tapered body's paper that is inked; null for other blanks. It fills the box of the bleed. */
export function arcWithBleedOf({ wrap, bleed }: Pick<BlankInHand, 'bleed' | 'wrap'>): Sector | null {
  const sector = wrap?.development.sector;
  return sector ? growSector(sector, bleed.value) : null;
}

/** The same as those of outline and bleed, but on a tapered body, whose paper is an arc. */
export function paperBoxesOf(blank: Pick<BlankInHand, 'outline' | 'edge' | 'bleed' | 'wrap'>): PaperBoxes {
  const sector = blank.wrap?.development.sector;
  if (!sector) return { outlineMm: blank.outline.box, bleedMm: bleedBoxOf(blank) };
  return { outlineMm: boxOfSector(sector), bleedMm: boxAround(sector, blank.bleed.value) };
}

/** The box on the paper of a rectangle of the outline's frame; on an arc that of the bent strip. */
export function boxOnPaper(blank: Pick<BlankInHand, 'wrap'>, rect: RectMm): RectMm {
  const sector = blank.wrap?.development.sector;
  return sector ? findBounds(bentOutline(sector, rect))! : rect;
}

/** The rim of a bent rectangle: its corners, and the points in between in which an arc is widest or highest. */
function bentOutline(sector: Sector, { x, y, width, height }: RectMm): PointMm[] {
  const middle = middleRadiusOf(sector);
  const at = (angleRad: number) => (angleRad + sector.angleRad / 2) * middle;
  const extremes = [-Math.PI / 2, 0, Math.PI / 2].map(at).filter((along) => along > x && along < x + width);
  return [x, ...extremes, x + width].flatMap((along) =>
    [y, y + height].map((down) => fromStrip(sector, { x: along, y: down })),
  );
}
