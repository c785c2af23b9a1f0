import { formatLength } from '../geometry/length.ts';
import type { Job } from '../job/job.ts';
import type { Raster } from '../raster/raster.ts';
import { defineCheck } from './define-check.ts';
import { placeOfReadings, scaleToReach, shareOfEdge } from './edge-places.ts';
import { readEdge } from './edge-profile.ts';
import { coverPasses, isShort, widthThatPasses } from './edge-remedy.ts';
import { formatGap, phraseGaps, worstPerSide } from './sides.ts';

export default defineCheck<{ readonly job: Job; readonly raster: Raster }>({
  id: 'bleed-cover',
  title: 'Bleed past the edge',
  reason:
    'Hand placement is a millimetre or two off: art that stops at or just beyond the edge leaves a bare hairline on one side.',
  source: [
    'derived: placement 1.5 + half the size error 0.5 + half the scale error 0.3 + rotation of 0.5 degrees 0.87 = 3.17 mm on 200 mm (inputs common practice, no source)',
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
    const short = edge.filter((reading) => isShort(reading, bleed.value));
    if (short.length === 0) return { findings: [] };
    const scale = scaleToReach(
      job,
      short.map(({ point, reachMm }) => ({ point, hasMm: reachMm, wantsMm: bleed.value })),
    );
    const widthMm = scale === null ? null : widthThatPasses(job, raster, job.placementMm.width * scale, 'up');
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
            ...(widthMm === null ? {} : { widthToReachMm: widthMm }),
            coverReaches: coverPasses(job, raster),
          },
        },
      ],
    };
  },
  phrases: {
    short: ({ actual, expected, facts }) =>
      `The art crosses the edge but goes on ${formatGap(actual!.value)} beyond it at the worst place (${phraseGaps(facts)}), expected ${formatLength(expected!.min!)}: a bare hairline will show along ${formatShare(Number(facts.sharePercent))}. ${remedy(facts)}`,
  },
});

function formatShare(percent: number): string {
  return percent === 0
    ? 'the corners'
    : percent < 1
      ? 'under 1 % of the outline'
      : `${Math.round(percent)} % of the outline`;
}

/** Only what was tried on this art: a larger size does not close the gaps of a ragged rim. */
function remedy(facts: Readonly<Record<string, unknown>>): string {
  const ways: string[] = [];
  if (typeof facts.widthToReachMm === 'number')
    ways.push(`print it ${formatLength(facts.widthToReachMm)} wide`);
  if (facts.coverReaches === true) ways.push('use --fit cover without a size');
  if (ways.length === 0)
    return 'It has gaps where it meets the edge, which a size that reaches the bleed line would not close: print it small enough to stay inside the safe line, as --fit inside does, or choose art that fills the blank.';
  const sentence = [...ways, 'print it small enough to stay inside the safe line'].join(', or ');
  return `${sentence.charAt(0).toUpperCase()}${sentence.slice(1)}.`;
}
