import type { PrintingCondition } from '../conditions/printing-condition.ts';
import type { IccProfile } from '../icc/profile.ts';
import type { Raster } from '../raster/raster.ts';

/** What a mend may look at besides the pixels. */
export interface MendContext {
  /** Of the raster's samples. */
  readonly source: IccProfile;
  readonly condition: PrintingCondition;
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
   * The mended raster, or the very same where there is nothing to mend: mended art is left as it is. The raster that
   * it is given is never changed.
   */
  readonly apply: (raster: Raster, context: MendContext) => Raster;
}
