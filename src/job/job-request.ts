import type { BlankRecord } from '../catalogue/records.ts';
import type { PointMm } from '../geometry/rectangle.ts';
import type { TypedSize } from '../geometry/size.ts';
import type { Surface, Turn } from './job.ts';

/** What a maker asks for. Left out means: as the blank says, or the default named here. Lengths in mm. */
export interface JobRequest {
  readonly blank: BlankRecord;
  /** Real size of the blank in hand; replaces the nominal outline. */
  readonly measured?: TypedSize;
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
