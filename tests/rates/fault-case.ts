import type { BlankRecord } from '../../src/catalogue/records.ts';
import type { Raster } from '../../src/raster/raster.ts';

/** A made picture of which it is known whether it has the fault. Printed `widthMm` wide on the plate of the tests. */
export interface FaultCase {
  readonly name: string;
  /** The code that must be found where there is a fault, and must not be where there is none. */
  readonly code: string;
  readonly fault: boolean;
  /** Made only when it is looked at: hundreds of pictures at once would fill the memory. */
  readonly raster: () => Raster | Promise<Raster>;
  readonly widthMm: number;
  /** Where another blank than the plate is needed. */
  readonly blank?: BlankRecord;
}

/** A fault that is put into a real picture. */
export interface Plant {
  readonly name: string;
  readonly check: string;
  /** The codes of which any is the answer. */
  readonly codes: readonly string[];
  /** The picture with the fault, a new one; null where this picture cannot have it. Numbers of chance come from `next`. */
  readonly plant: (raster: Raster, next: () => number) => Raster | null | Promise<Raster | null>;
}
