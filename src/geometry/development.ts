import { BlankcheckError } from '../blankcheck-error.ts';
import { boxOfSector, type Sector } from './sector.ts';

/** The printed band of a round body with straight sides; diameters at its upper and lower end, height measured upright. */
export interface RoundBand {
  readonly topDiameterMm: number;
  readonly bottomDiameterMm: number;
  readonly heightMm: number;
}

/** How far the paper goes round: once with an overlap (0 or more), or with a gap, or to a length of its own; all at mid height but the overlap, which is taken at the wider end. */
export type WayRound =
  | { readonly overlapMm: number }
  | { readonly gapMm: number }
  | { readonly lengthMm: number };

/** The flat paper of a round body. Lengths in mm. */
export interface Development {
  readonly kind: 'rectangle' | 'sector';
  /** null for a rectangle. */
  readonly outerRadiusMm: number | null;
  readonly innerRadiusMm: number | null;
  /** Of the whole flat paper, overlap included; 0 for a rectangle. */
  readonly angleDeg: number;
  /** Height of the arc of the paper's upper edge over its chord; 0 for a rectangle. */
  readonly sagittaMm: number;
  /** How much too long (positive) or too short a rectangle as wide as the mean of both circumferences is at either end. */
  readonly rectangleErrorMm: { readonly rim: number; readonly foot: number };
  /** Box of the flat paper. */
  readonly widthMm: number;
  readonly heightMm: number;
  /** Along the paper at mid height, by the slant: the strip that art is placed on. */
  readonly strip: { readonly widthMm: number; readonly heightMm: number };
  /** Once round the body at mid height. */
  readonly onceRoundMm: number;
  readonly sector: Sector | null;
}

/** `auto` takes a rectangle where it is right; a rectangle asked for is taken whatever the body. */
export type DevelopmentAsked = 'auto' | 'rectangle';

/** Below these a rectangle lies well enough (common practice, no source; trade values of the catalogue's notes). */
export const RECTANGLE_SAGITTA_MM = 1;
export const RECTANGLE_DIFFERENCE_MM = 2;
/** Diameters closer than this are those of a cylinder: the radius of the cone's paper would be without bounds. */
const CYLINDER_MM = 0.05;

/**
 * The development of a right circular cylinder or frustum: slant s = sqrt(h² + ((Dt - Db) / 2)²), outer radius
 * R = s · Dwide / |Dt - Db|, inner radius R - s, angle once round = pi |Dt - Db| / s (any handbook of geometry).
 * A body wider below opens the other way. @throws BlankcheckError `bad-wrap`
 */
export function developBand(
  band: RoundBand,
  wayRound: WayRound,
  asked: DevelopmentAsked = 'auto',
): Development {
  checkBand(band);
  const { topDiameterMm: top, bottomDiameterMm: bottom, heightMm } = band;
  const difference = Math.abs(top - bottom);
  const slantMm = Math.hypot(heightMm, difference / 2);
  const onceRoundMm = (Math.PI * (top + bottom)) / 2;
  // + 0: a straight body has errors of 0, not of minus 0.
  const error = (Math.PI * (bottom - top)) / 2 + 0;
  const rectangleErrorMm = { rim: error, foot: 0 - error };
  const asRectangle = (): Development => {
    const widthMm = lengthRound(wayRound, onceRoundMm, 1);
    const flat = { widthMm, heightMm: slantMm };
    const noArc = {
      kind: 'rectangle',
      outerRadiusMm: null,
      innerRadiusMm: null,
      angleDeg: 0,
      sagittaMm: 0,
    } as const;
    return { ...noArc, rectangleErrorMm, ...flat, strip: flat, onceRoundMm, sector: null };
  };
  if (asked === 'rectangle' || difference < CYLINDER_MM) return asRectangle();
  const outerRadiusMm = (slantMm * Math.max(top, bottom)) / difference;
  const middleRadiusMm = outerRadiusMm - slantMm / 2;
  const stripMm = lengthRound(wayRound, onceRoundMm, middleRadiusMm / outerRadiusMm);
  const angleRad = stripMm / middleRadiusMm;
  if (angleRad >= 2 * Math.PI)
    throw new BlankcheckError(
      'bad-wrap',
      `The flat paper of this body would go ${((angleRad * 180) / Math.PI).toFixed(0)} degrees round its own middle, and no paper goes beyond 360: the diameters ${top} and ${bottom} mm differ too much for a height of ${heightMm} mm. Measure both diameters and the height between them again.`,
    );
  const sector: Sector = {
    outerRadiusMm,
    innerRadiusMm: Math.max(0, outerRadiusMm - slantMm),
    angleRad,
    opens: top > bottom ? 'below' : 'above',
  };
  const upperRadiusMm = top > bottom ? sector.outerRadiusMm : sector.innerRadiusMm;
  const sagittaMm = upperRadiusMm * (1 - Math.cos(Math.min(angleRad, 2 * Math.PI) / 2));
  if (sagittaMm < RECTANGLE_SAGITTA_MM && Math.PI * difference < RECTANGLE_DIFFERENCE_MM)
    return asRectangle();
  const { width, height } = boxOfSector(sector);
  return {
    kind: 'sector',
    outerRadiusMm,
    innerRadiusMm: sector.innerRadiusMm,
    angleDeg: (angleRad * 180) / Math.PI,
    sagittaMm,
    rectangleErrorMm,
    widthMm: width,
    heightMm: height,
    strip: { widthMm: stripMm, heightMm: slantMm },
    onceRoundMm,
    sector,
  };
}

/** `overlapShare`: what a length at the wider end is at mid height. */
function lengthRound(wayRound: WayRound, onceRoundMm: number, overlapShare: number): number {
  if ('lengthMm' in wayRound) return wayRound.lengthMm;
  if ('overlapMm' in wayRound) return onceRoundMm + wayRound.overlapMm * overlapShare;
  if (wayRound.gapMm >= onceRoundMm)
    throw new BlankcheckError(
      'bad-wrap',
      `Expected a gap of less than ${onceRoundMm.toFixed(1)} mm, which is once round the body, received ${wayRound.gapMm} mm. The gap is what stays free at the handle, measured along the body.`,
    );
  return onceRoundMm - wayRound.gapMm;
}

function checkBand({ topDiameterMm, bottomDiameterMm, heightMm }: RoundBand): void {
  for (const [what, value] of [
    ['a diameter above', topDiameterMm],
    ['a diameter below', bottomDiameterMm],
    ['a height of the print', heightMm],
  ] as const) {
    if (value > 0 && Number.isFinite(value)) continue;
    throw new BlankcheckError('bad-wrap', `Expected ${what} of more than 0 mm, received ${value} mm.`);
  }
}
