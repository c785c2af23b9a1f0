import { practiceLimit } from '../catalogue/practice.ts';
import type { Job } from '../job/job.ts';
import { defineCheck } from './define-check.ts';

const SIDE = practiceLimit('preview-side');

export default defineCheck<Job>({
  id: 'marked-preview',
  title: 'Preview-sized art',
  reason:
    'Samples that may be looked at before a licence is bought are small; printed, they are coarse, and nobody may have the right to print them.',
  source: [`${SIDE.value} px on the longer side (common practice, no source)`],
  codes: { 'preview-sized': ['advice'] },
  needs: ({ job, artwork }) => {
    if (job === null) return { skip: 'nothing is visible' };
    if (artwork.vector !== null) return { skip: 'a drawing has no pixels of its own' };
    return { inputs: job };
  },
  run: ({ contentBoxPx, placementMm }) => {
    const longer = Math.max(contentBoxPx.width, contentBoxPx.height);
    if (longer >= SIDE.value) return { findings: [] };
    return {
      findings: [
        {
          code: 'preview-sized',
          severity: 'advice',
          actual: { value: longer, unit: 'px' },
          expected: { min: SIDE.value, unit: 'px', from: SIDE.from },
          place: { px: contentBoxPx, mm: placementMm },
          facts: { widthMm: placementMm.width, heightMm: placementMm.height },
        },
      ],
    };
  },
  phrases: {
    'preview-sized': ({ actual }) =>
      `The art has ${actual?.value} px on its longer side, as previews have. Is it the file you may print? If a larger one came with your licence, use that.`,
  },
});
