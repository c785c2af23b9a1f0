import { formatSize } from '../geometry/length.ts';
import { frameOf, rectToMm } from '../job/art-frame.ts';
import type { Job } from '../job/job.ts';
import { defineCheck } from './define-check.ts';

export default defineCheck<{ readonly job: Job; readonly widthPx: number; readonly heightPx: number }>({
  id: 'transparent-margin',
  title: 'Transparent margins that are trimmed',
  reason:
    'A size given to the whole canvas makes the visible part smaller than wanted; here every size means the visible part.',
  source: ['derived from the content box at alpha > 0'],
  codes: { trimmed: ['advice'] },
  needs: ({ job, extents }) =>
    job === null
      ? { skip: 'nothing is visible, so there is no margin' }
      : { inputs: { job, widthPx: extents.widthPx, heightPx: extents.heightPx } },
  run: ({ job, widthPx, heightPx }) => {
    const { contentBoxPx, placementMm } = job;
    if (contentBoxPx.width === widthPx && contentBoxPx.height === heightPx) return { findings: [] };
    const canvas = rectToMm(frameOf(job), { x: 0, y: 0, width: widthPx, height: heightPx });
    const margins = {
      leftMm: placementMm.x - canvas.x,
      rightMm: canvas.x + canvas.width - placementMm.x - placementMm.width,
      topMm: placementMm.y - canvas.y,
      bottomMm: canvas.y + canvas.height - placementMm.y - placementMm.height,
    };
    // Sides without a margin come out as rounding noise.
    const trimmed = Object.fromEntries(Object.entries(margins).filter(([, mm]) => mm > 1e-6));
    return {
      findings: [
        {
          code: 'trimmed',
          severity: 'advice',
          place: { px: contentBoxPx, mm: placementMm },
          facts: {
            ...trimmed,
            canvasWidthMm: canvas.width,
            canvasHeightMm: canvas.height,
            widthMm: placementMm.width,
            heightMm: placementMm.height,
          },
        },
      ],
    };
  },
  phrases: {
    trimmed: ({ facts }) =>
      `Transparent margins were trimmed: the visible part prints ${formatSize(Number(facts.widthMm), Number(facts.heightMm))}, not the whole canvas. Nothing to do.`,
  },
});
