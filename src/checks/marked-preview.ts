import { practiceLimit } from '../catalogue/practice.ts';
import { findRepeatedOverlay } from '../faults/repeated-overlay.ts';
import { formatLength, MM_PER_INCH } from '../geometry/length.ts';
import type { Job } from '../job/job.ts';
import { readLightnessCells } from '../raster/lightness-cells.ts';
import type { Raster } from '../raster/raster.ts';
import { type CheckResult, defineCheck } from './define-check.ts';
import type { Finding } from './finding.ts';

const SIDE = practiceLimit('preview-side');
/** Cells of the reduced copy that an overlay is sought in, along the longer side: its strokes are wider (own choice). */
const MOST_CELLS = 512;

interface Inputs {
  readonly job: Job;
  readonly raster: Raster;
}

export default defineCheck<Inputs>({
  id: 'marked-preview',
  title: 'Samples to look at, not to print',
  reason:
    'Samples that may be looked at before a licence is bought are small, or carry a mark again and again; printed, they are coarse or marked, and nobody may have the right to print them.',
  source: [
    `${SIDE.value} px on the longer side (common practice, no source)`,
    'a mark that repeats exactly over art which does not: limits of its search by trial on real pictures (own choice)',
  ],
  // Advice: nobody can see from a picture what may be printed. An overlay of the tone of the art itself is not found.
  codes: { 'preview-sized': ['advice'], 'repeated-overlay': ['advice'] },
  needs: ({ job, artwork }) => {
    if (job === null) return { skip: 'nothing is visible' };
    if (artwork.vector !== null) return { skip: 'a drawing has no pixels of its own' };
    return { inputs: { job, raster: artwork.raster } };
  },
  run: (inputs) => {
    const findings = [...judgeSize(inputs.job)];
    if (inputs.raster.model === 'cmyk')
      return { findings, skip: 'a repeated overlay is not sought in art of inks' };
    return { findings: [...findings, ...judgeOverlay(inputs)] };
  },
  phrases: {
    'preview-sized': ({ actual }) =>
      `The art has ${actual?.value} px on its longer side, as previews have. Is it the file you may print? If a larger one came with your licence, use that.`,
    'repeated-overlay': ({ actual, facts }) =>
      `The same faint mark seems to lie over the art about ${facts.times} times, one every ${formatLength(actual!.value)}, as samples carry it. Is it the file you may print? If one without marks came with your licence, use that; if the marks are part of the art, go on.`,
  },
});

function judgeSize({ contentBoxPx, placementMm }: Job): readonly Finding[] {
  const longer = Math.max(contentBoxPx.width, contentBoxPx.height);
  if (longer >= SIDE.value) return [];
  return [
    {
      code: 'preview-sized',
      severity: 'advice',
      actual: { value: longer, unit: 'px' },
      expected: { min: SIDE.value, unit: 'px', from: SIDE.from },
      place: { px: contentBoxPx, mm: placementMm },
      facts: { widthMm: placementMm.width, heightMm: placementMm.height },
    },
  ];
}

function judgeOverlay({ job, raster }: Inputs): CheckResult['findings'] {
  const { contentBoxPx, placementMm, effectivePpi } = job;
  const cells = readLightnessCells(raster, contentBoxPx, MOST_CELLS);
  const overlay = findRepeatedOverlay(cells);
  if (overlay === null) return [];
  const [right, down] = overlay.steps[1];
  const toMm = cells.cellPx * MM_PER_INCH;
  // Near enough where art is stretched or turned: both scales differ by little.
  const repeatMm = Math.hypot((right * toMm) / effectivePpi.x, (down * toMm) / effectivePpi.y);
  return [
    {
      code: 'repeated-overlay',
      severity: 'advice',
      actual: { value: repeatMm, unit: 'mm' },
      place: { px: contentBoxPx, mm: placementMm },
      facts: { times: overlay.times, strength: overlay.strength },
    },
  ];
}
