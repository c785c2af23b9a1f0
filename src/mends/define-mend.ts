import type { PrinterConversion } from '../conditions/printer-conversion.ts';
import type { PrintingCondition } from '../conditions/printing-condition.ts';
import type { PointPx } from '../geometry/rectangle.ts';
import type { IccProfile } from '../icc/profile.ts';
import type { Job } from '../job/job.ts';
import type { Raster } from '../raster/raster.ts';

/** How the art goes on beyond its end: its last pixels, mirrored at it, or blurred along it. */
export const EXTEND_HOW = ['edge', 'reflect', 'blur'] as const;
export type ExtendHow = (typeof EXTEND_HOW)[number];

/** What a mend may look at besides the pixels. */
export interface MendContext {
  /** Of the raster's samples. */
  readonly source: IccProfile;
  readonly condition: PrintingCondition;
  /** null where the driver converts. */
  readonly conversion: PrinterConversion | null;
  /** The raster, or another one in its stead, placed on its blank; null when nothing is visible. */
  readonly job: (raster?: Raster) => Job | null;
  readonly extend: ExtendHow;
}

/** What a mend made. */
export interface MendedRaster {
  /** The very same where there was nothing to mend. */
  readonly raster: Raster;
  /** Where the top left corner of the old canvas lies on the new one, where the canvas grew. */
  readonly originPx?: PointPx;
  /** How far at most art that was not there goes on beyond what was. */
  readonly inventedMm?: number;
}

/** A mend: everything about it in one file. */
export interface MendDefinition {
  /** What it does, verb first; its file has the same name. */
  readonly id: string;
  readonly title: string;
  /** What it changes, and what it leaves as it is. */
  readonly reason: string;
  /** Published sources, or "own choice". */
  readonly source: readonly string[];
  /** The findings that it answers to, as `<check>/<code>`: after it they are gone. */
  readonly answers: readonly string[];
  /** True where nobody would miss what it takes away. */
  readonly gentle: boolean;
  /**
   * Mended art is left as it is, and the raster that it is given is never changed.
   */
  readonly apply: (raster: Raster, context: MendContext) => MendedRaster;
  /**
   * What is done once more at the print size, for faults that resampling brings back; the very same raster where there
   * are none. Never changes the raster that it is given.
   */
  readonly finish?: (picture: Raster, context: Pick<MendContext, 'source' | 'condition'>) => Raster;
}
