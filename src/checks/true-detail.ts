import type { Enlarging } from '../faults/find-enlarging.ts';
import { findEnlargingOfBoth, isSameOfBoth } from '../faults/find-enlarging-of-both.ts';
import type { Job } from '../job/job.ts';
import type { Raster } from '../raster/raster.ts';
import { type CheckResult, defineCheck } from './define-check.ts';
import type { Finding, Severity } from './finding.ts';
import { findMissedLimit, LIMIT_WORDS, phraseLargestSize } from './ppi-limit.ts';

/**
 * Art that was interpolated by less is advised of only: strong JPEGs whose finest waves were dropped seem to be enlarged by
 * 1.15 to 1.33, both ways alike (tests/rates/real.md).
 */
const PLAIN = 1.5;

interface Inputs {
  readonly job: Job;
  readonly artwork: Raster;
}

export default defineCheck<Inputs>({
  id: 'true-detail',
  title: 'Detail really present at the print size',
  reason:
    'Art that was enlarged has the pixels of a fine file and the detail of a coarse one: it prints as soft as the small one would.',
  source: [
    'a picture that was enlarged repeats the weights of its kernel: Gallagher, CRV 2005 (from memory); kernels of Mitchell and Netravali, SIGGRAPH 1988',
    'limits of the family in seeds/families.json (common practice, no source)',
  ],
  // One direction alone is advice, and a small factor: stripes, weaves and icons have periods of their own.
  codes: {
    'below-stop': ['error', 'advice'],
    'below-acceptable': ['warning', 'advice'],
    'below-good': ['advice'],
  },
  needs: ({ job, artwork }) => {
    if (job === null) return { skip: 'nothing is visible, so no detail is' };
    if (artwork.vector !== null) return { skip: 'a drawing is drawn at the print resolution' };
    if (artwork.raster.model === 'cmyk') return { skip: 'detail in art of inks is not judged' };
    return { inputs: { job, artwork: artwork.raster } };
  },
  run: judge,
  phrases: {
    'below-stop': (finding) => phrase(finding, 'it will look blurred or stepped'),
    'below-acceptable': (finding) => phrase(finding, 'it will look soft'),
    'below-good': (finding) => phrase(finding, 'fine for photos, soft for lettering and line art'),
  },
});

function judge({ job, artwork }: Inputs): CheckResult {
  const found = findEnlargingOfBoth(artwork);
  const axes = (['x', 'y'] as const).flatMap((axis) => {
    const one = found[axis];
    return one === null ? [] : [{ ...one, truePpi: job.effectivePpi[axis] / one.factor }];
  });
  const [coarser] = axes.sort((a, b) => a.truePpi - b.truePpi);
  if (coarser === undefined)
    return {
      findings: [],
      skip: 'the art has too little or too soft detail to tell whether it was enlarged: what its pixels really show is not known',
    };
  const facts = { enlargedBy: coarser.factor, truePpi: coarser.truePpi, by: coarser.by };
  // Art that was not enlarged is for the check of effective resolution.
  if (coarser.factor === 1) return { findings: [], facts };
  return { findings: judgePpi(job, coarser, isSameOfBoth(found)), facts };
}

function judgePpi(
  job: Job,
  { factor, truePpi, by }: Enlarging & { readonly truePpi: number },
  sure: boolean,
): Finding[] {
  const missed = findMissedLimit(truePpi, job.blank.resolution);
  if (missed === null) return [];
  const { code, severity, limit, aim } = missed;
  const share = truePpi / aim.value;
  const isPlain = sure && (factor >= PLAIN || by === 'repeated-pixels');
  const lowered: Severity = isPlain ? severity : 'advice';
  return [
    {
      code,
      severity: lowered,
      actual: { value: truePpi, unit: 'ppi' },
      expected: { min: limit.value, unit: 'ppi', from: limit.from },
      facts: {
        enlargedBy: factor,
        by,
        bothDirections: sure,
        aimPpi: aim.value,
        widthAtAimMm: job.placementMm.width * share,
        heightAtAimMm: job.placementMm.height * share,
      },
    },
  ];
}

function phrase({ code, actual, expected, facts }: Finding, effect: string): string {
  const how = facts.by === 'repeated-pixels' ? 'by repeating its pixels ' : '';
  const words = LIMIT_WORDS[code]!;
  const smaller = phraseLargestSize(Number(facts.widthAtAimMm), Number(facts.heightAtAimMm));
  return `The art seems to have been enlarged ${how}${Number(facts.enlargedBy).toFixed(1)} times: its detail is that of about ${Math.round(actual!.value)} pixels per inch at this print size, expected at least ${expected!.min} ${words.least}: ${effect}. Ask for the original${smaller ? `, or print it ${smaller} (${facts.aimPpi} ppi of real detail, ${words.aim})` : ''}.`;
}
