import { composePrint, scaleArt } from '../../src/prepare/carry-out.ts';
import type { CarryOutOptions } from '../../src/prepare/carry-out-step.ts';
import type { PrintPlan } from '../../src/prepare/step.ts';
import type { Raster } from '../../src/raster/raster.ts';

/** Every step of a plan on the result of the one before. */
export async function carryOut(raster: Raster, plan: PrintPlan, options: CarryOutOptions): Promise<Raster> {
  return composePrint(await scaleArt(raster, plan, options), plan, options);
}
