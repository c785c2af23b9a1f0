import { practiceLimit } from '../catalogue/practice.ts';
import { formatLength } from '../geometry/length.ts';
import type { Job } from '../job/job.ts';
import type { Raster } from '../raster/raster.ts';
import { type CheckResult, defineCheck, type PrintPicture } from './define-check.ts';
import { readEdgeStrips } from './edge-strips.ts';
import { findParallelRing } from './parallel-ring.ts';
import { findParallelStep } from './parallel-step.ts';
import { placeInPicture } from './picture-place.ts';

const LIMIT = practiceLimit('border-width');
/** Rays go a little beyond the limit, so that a step on it is seen whole. */
const BEYOND_MM = 0.75;
/** Rays that stay clear of corners, below which a blank is too small to say anything of all its sides (own choice). */
const FEWEST_RAYS = 40;

interface Inputs {
  readonly job: Job;
  readonly picture: PrintPicture;
  readonly artwork: Raster;
}

export default defineCheck<Inputs>({
  id: 'thin-border',
  title: 'Border or frame close to the edge',
  reason:
    'Nobody places a transfer to better than a millimetre: a narrow strip along the edge shows it, as one side comes out wider than the other.',
  source: [
    `at least ${LIMIT.value} mm (common practice, no source)`,
    'a step of colour at one distance all round, or one colour there and not outside it, of 24 in 255 (own choice)',
  ],
  // Advice: how many of its alarms on real art are false stands in tests/rates/real.md.
  // It misses frames that are not alike on all sides, and those that stray by more than 0.2 mm on a texture.
  codes: { narrow: ['advice'] },
  needs: ({ job, picture, artwork }) => {
    if (job === null || picture === null) return { skip: 'nothing is visible, so there is no border' };
    if (picture.raster.model === 'cmyk') return { skip: 'borders in art of inks are not judged' };
    return { inputs: { job, picture, artwork: artwork.raster } };
  },
  run: judge,
  phrases: {
    narrow: ({ actual }) =>
      `A border or frame runs along the edge, ${formatLength(actual!.value)} from it, expected at least ${formatLength(LIMIT.value)}: placed 1 mm off, one side comes out ${formatLength(2)} wider than the other. Make the border wider, take the frame away, or let the art run over the edge.`,
  },
});

function judge({ job, picture, artwork }: Inputs): CheckResult {
  const strips = readEdgeStrips(picture, job.blank, LIMIT.value + BEYOND_MM);
  if (strips.strips.length < FEWEST_RAYS)
    return { findings: [], skip: 'the blank is too small for a strip along its edge' };
  const step = findParallelStep(strips, LIMIT.value) ?? findParallelRing(strips, LIMIT.value);
  if (step === null) return { findings: [] };
  const { widthPx: width, heightPx: height } = picture.raster;
  return {
    findings: [
      {
        code: 'narrow',
        severity: 'advice',
        actual: { value: step.distanceMm, unit: 'mm' },
        expected: { min: LIMIT.value, unit: 'mm', from: LIMIT.from },
        place: placeInPicture(picture, { x: 0, y: 0, width, height }, job, artwork),
        facts: { sharePercent: 100 * step.share },
      },
    ],
  };
}
