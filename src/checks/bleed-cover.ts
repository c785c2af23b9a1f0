import { formatLength } from '../geometry/length.ts';
import type { Job } from '../job/job.ts';
import type { Raster } from '../raster/raster.ts';
import { defineCheck } from './define-check.ts';
import { placeOfReadings, scaleToReach, shareOfEdge } from './edge-places.ts';
import { type EdgeReading, readEdge } from './edge-profile.ts';
import { phraseSides, TOUCH_MM, worstPerSide } from './sides.ts';

type Short = EdgeReading & { readonly reachMm: number };

export default defineCheck<{ readonly job: Job; readonly raster: Raster }>({
  id: 'bleed-cover',
  title: 'Bleed past the edge',
  reason:
    'Hand placement is a millimetre or two off: art that stops at or just beyond the edge leaves a bare hairline on one side.',
  source: [
    'derived: error budget of placement, size and scale (DEVELOPERS.md)',
    'bleed of the blank (common practice, no source)',
  ],
  codes: { short: ['error'] },
  needs: ({ job, artwork }) =>
    job === null
      ? { skip: 'nothing is visible, so nothing reaches the edge' }
      : { inputs: { job, raster: artwork.raster } },
  run: ({ job, raster }) => {
    const { bleed } = job.blank;
    const edge = readEdge(job, raster);
    const short = edge.filter(
      (reading): reading is Short =>
        reading.reachMm !== null &&
        reading.reachMm < bleed.value - TOUCH_MM &&
        reading.point.faces !== 'inside',
    );
    if (short.length === 0) return { findings: [] };
    const scale = scaleToReach(
      job,
      short.map(({ point, reachMm }) => ({ point, hasMm: reachMm, wantsMm: bleed.value })),
    );
    return {
      findings: [
        {
          code: 'short',
          severity: 'error',
          actual: {
            value: short.reduce((least, { reachMm }) => Math.min(least, reachMm), Infinity),
            unit: 'mm',
          },
          expected: { min: bleed.value, unit: 'mm', from: bleed.from },
          place: placeOfReadings(job, raster, short, bleed.value),
          facts: {
            ...worstPerSide(
              short.map(({ side, reachMm }) => ({ side, value: reachMm })),
              'smallest',
            ),
            sharePercent: shareOfEdge(edge, short),
            ...(scale === null ? {} : { widthToReachMm: job.placementMm.width * scale }),
          },
        },
      ],
    };
  },
  phrases: {
    short: ({ actual, expected, facts }) =>
      `The art crosses the edge but goes on only ${formatLength(actual!.value)} beyond it at the worst place (${phraseSides(facts)}), expected ${formatLength(expected!.min!)}: a bare hairline will show along ${formatShare(Number(facts.sharePercent))}. ${remedy(facts)}`,
  },
});

function formatShare(percent: number): string {
  return percent === 0
    ? 'the corners'
    : percent < 1
      ? 'under 1 % of the outline'
      : `${Math.round(percent)} % of the outline`;
}

function remedy(facts: Readonly<Record<string, unknown>>): string {
  const larger =
    typeof facts.widthToReachMm === 'number'
      ? `Print it at least ${formatLength(roundUp(facts.widthToReachMm))} wide, use`
      : 'Use';
  return `${larger} --fit cover, or print it small enough to stay inside the safe line.`;
}

function roundUp(mm: number): number {
  return Math.ceil(mm * 10) / 10;
}
