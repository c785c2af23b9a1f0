import { practiceLimit } from '../catalogue/practice.ts';
import { findRepeatedOverlay, type RepeatedOverlay } from '../faults/repeated-overlay.ts';
import { formatMillimetres, MM_PER_INCH } from '../geometry/length.ts';
import type { PointPx } from '../geometry/rectangle.ts';
import type { Job } from '../job/job.ts';
import type { Raster } from '../raster/raster.ts';
import { type CheckResult, defineCheck } from './define-check.ts';
import type { Finding } from './finding.ts';

const SIDE = practiceLimit('preview-side');

interface Inputs {
  readonly job: Job;
  readonly raster: Raster;
}

export default defineCheck<Inputs>({
  id: 'marked-preview',
  title: 'Previews and marked samples',
  reason:
    'Samples that may be looked at before a licence is bought are small or marked all over; printed, they are coarse or show the mark.',
  source: [
    `${SIDE.value} px on the longer side (common practice, no source)`,
    'a mark repeated in two directions over art that is itself not repeated: autocorrelation (Wiener-Khinchin); limits from made pictures (own choice); on those it misses marks of mid gray and the faintest, so it is advice',
  ],
  codes: { 'preview-sized': ['advice'], overlay: ['advice'] },
  needs: ({ job, artwork }) => {
    if (job === null) return { skip: 'nothing is visible' };
    if (artwork.vector !== null) return { skip: 'a drawing has no pixels of its own' };
    return { inputs: { job, raster: artwork.raster } };
  },
  run: judge,
  phrases: {
    'preview-sized': ({ actual }) =>
      `The art has ${actual?.value} px on its longer side, as previews have. Is it the file you may print? If a larger one came with your licence, use that.`,
    overlay: ({ facts }) =>
      `Something faint is repeated all over the art, every ${formatMillimetres(Number(facts.firstStepMm))} and ${formatMillimetres(Number(facts.secondStepMm))}, as marks on unlicensed samples are. Do you have the right to print it? If so, use the file without the mark; if it belongs to the art, nothing is wrong.`,
  },
});

function judge({ job, raster }: Inputs): CheckResult {
  const { contentBoxPx, placementMm } = job;
  const place = { px: contentBoxPx, mm: placementMm };
  const findings: Finding[] = [];
  const longer = Math.max(contentBoxPx.width, contentBoxPx.height);
  if (longer < SIDE.value)
    findings.push({
      code: 'preview-sized',
      severity: 'advice',
      actual: { value: longer, unit: 'px' },
      expected: { min: SIDE.value, unit: 'px', from: SIDE.from },
      place,
      facts: { widthMm: placementMm.width, heightMm: placementMm.height },
    });
  const overlay = findRepeatedOverlay(raster, contentBoxPx);
  if (overlay !== null)
    findings.push({ code: 'overlay', severity: 'advice', place, facts: tell(overlay, job) });
  return { findings };
}

function tell({ stepsPx, presence, own }: RepeatedOverlay, { effectivePpi }: Job) {
  const length = ({ x, y }: PointPx) => Math.hypot(x / effectivePpi.x, y / effectivePpi.y) * MM_PER_INCH;
  return {
    firstStepMm: length(stepsPx[0]),
    secondStepMm: length(stepsPx[1]),
    presencePercent: presence * 100,
    ownPercent: own * 100,
  };
}
