import { findStrays, type Strays } from '../faults/find-strays.ts';
import { strayLimitsFor } from '../job/stray-limits.ts';
import { channelsOf, type Raster } from '../raster/raster.ts';
import type { MendContext, MendDefinition, MendedRaster } from './define-mend.ts';

export default {
  id: 'drop-strays',
  title: 'Clear specks away from the design',
  reason:
    'Makes the specks that the check of stray pixels finds fully clear, whatever they look like. The design keeps every pixel; its box shrinks, so that it is sized and centred without them.',
  source: ['the limits of the check of stray pixels'],
  answers: ['stray-pixels/enlarges-box', 'stray-pixels/specks'],
  gentle: true,
  apply(raster, { job }: MendContext): MendedRaster {
    let mended = raster;
    // What is left prints larger, and a speck that was too near to be one may come to be far enough.
    for (;;) {
      const placed = job(mended);
      const strays = placed && findStrays(mended, strayLimitsFor(placed));
      if (strays === null) return { raster: mended };
      mended = clearStrays(mended, strays);
    }
  },
} satisfies MendDefinition;

function clearStrays(raster: Raster, { visitRuns }: Strays): Raster {
  const step = channelsOf(raster);
  const data = raster.data.slice();
  visitRuns((y, from, to) => {
    const row = y * raster.widthPx;
    data.fill(0, (row + from) * step, (row + to) * step);
  });
  return { ...raster, data };
}
