import { formatLength } from '../geometry/length.ts';
import type { Job } from '../job/job.ts';
import type { Raster } from '../raster/raster.ts';
import { defineCheck } from './define-check.ts';
import { placeOfReadings, scaleToReach, shareOfEdge } from './edge-places.ts';
import { type EdgeReading, readEdge } from './edge-profile.ts';
import { phraseSides, worstPerSide } from './sides.ts';

type Close = EdgeReading & { readonly clearanceMm: number };

export default defineCheck<{ readonly job: Job; readonly raster: Raster }>({
  id: 'safe-area',
  title: 'Art inside the safe line',
  reason:
    'Art that ends between the safe line and the edge shows every millimetre of misplacement as an uneven border.',
  source: [
    'derived: error budget of placement, size and scale (DEVELOPERS.md)',
    'safe inset of the blank (common practice, no source)',
  ],
  codes: { 'too-close': ['warning'] },
  needs: ({ job, artwork }) =>
    job === null
      ? { skip: 'nothing is visible, so nothing is near the edge' }
      : { inputs: { job, raster: artwork.raster } },
  run: ({ job, raster }) => {
    const { safe } = job.blank;
    const edge = readEdge(job, raster);
    const close = edge.filter(
      (reading): reading is Close => reading.clearanceMm !== null && reading.point.faces !== 'outside',
    );
    if (close.length === 0) return { findings: [] };
    const scale = scaleToReach(
      job,
      close.map(({ point, clearanceMm }) => ({ point, hasMm: -clearanceMm, wantsMm: -safe.value })),
    );
    return {
      findings: [
        {
          code: 'too-close',
          severity: 'warning',
          actual: {
            value: close.reduce((least, { clearanceMm }) => Math.min(least, clearanceMm), Infinity),
            unit: 'mm',
          },
          expected: { min: safe.value, unit: 'mm', from: safe.from },
          place: placeOfReadings(job, raster, close, 0),
          facts: {
            ...worstPerSide(
              close.map(({ side, clearanceMm }) => ({ side, value: clearanceMm })),
              'smallest',
            ),
            sharePercent: shareOfEdge(edge, close),
            ...(scale === null ? {} : { widthToClearMm: job.placementMm.width * scale }),
          },
        },
      ],
    };
  },
  phrases: {
    'too-close': ({ actual, expected, facts }) =>
      `The art ends ${formatLength(actual!.value)} from the edge at the closest place (${phraseSides(facts)}), expected ${formatLength(expected!.min!)} or more: a small placement error will show. ${typeof facts.widthToClearMm === 'number' ? `Print it at most ${formatLength(Math.floor(facts.widthToClearMm * 10) / 10)} wide, or let` : 'Move it with --offset, or let'} it run over the edge with its full bleed.`,
  },
});
