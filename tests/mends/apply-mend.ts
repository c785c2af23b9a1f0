import { loadCondition } from '../../src/conditions/load-condition.ts';
import { SRGB_PROFILE } from '../../src/icc/srgb-profile.ts';
import type { MendDefinition } from '../../src/mends/define-mend.ts';
import type { Raster } from '../../src/raster/raster.ts';
import { subjectOf } from '../checks/jobs.ts';

const condition = await loadCondition('coated-reference');

/** What a mend makes of sRGB art that is printed so on the plate of the tests, by the reference condition. */
export function applyMend(
  mend: MendDefinition,
  raster: Raster,
  request: { readonly widthMm: number },
): Raster {
  return mend.apply(raster, {
    source: SRGB_PROFILE,
    condition,
    conversion: null,
    job: (placed = raster) => subjectOf(placed, request).job,
    extend: 'reflect',
  }).raster;
}
