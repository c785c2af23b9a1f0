import type { BlankRecord } from '../catalogue/records.ts';
import type { DevelopmentAsked } from '../geometry/development.ts';
import type { MeasuredBody } from '../geometry/measured-body.ts';
import type { PointMm } from '../geometry/rectangle.ts';
import type { TypedSize } from '../geometry/size.ts';
import type { Surface, Turn } from './job.ts';
import type { Hand, WrapPlacing } from './wrap-places.ts';

/** What a maker asks for. Left out means: as the blank says, or the default named here. Lengths in mm. */
export interface JobRequest {
  readonly blank: BlankRecord;
  /** Real size of the blank in hand; replaces the nominal outline. */
  readonly measured?: TypedSize | MeasuredBody;
  /** On a tapered body: the arc it needs (`auto`, the default), or a rectangle all the same. */
  readonly development?: DevelopmentAsked;
  /** Where on a round body; in the middle of the paper, opposite handle or seam, when left out. */
  readonly wrap?: WrapPlacing;
  /** Whose drinking hand decides the one face; the right one by default. */
  readonly hand?: Hand;
  /** Printed size of the visible part; one keeps the proportions, both may stretch. */
  readonly widthMm?: number;
  readonly heightMm?: number;
  /** When no size is given; `inside` by default. */
  readonly fit?: 'inside' | 'cover';
  /** Clockwise, before placing; 0 by default. */
  readonly turn?: Turn;
  /** From the middle, right and down as seen from the front. */
  readonly offsetMm?: PointMm;
  readonly bleedMm?: number;
  readonly safeMm?: number;
  readonly surface?: Surface;
  /** Pixels per inch of the print-ready file; the printer's, else the blank's own, else 300. */
  readonly ppi?: number;
  /** What of the printer concerns the file; an unknown printer takes any ppi and mirrors nothing by itself. */
  readonly printer?: { readonly ppi?: number; readonly driverMirrors: boolean };
}
