import { practiceLimit } from '../catalogue/practice.ts';
import { findCutOffs } from '../faults/find-cut-off.ts';
import { dropNoise } from '../geometry/drop-noise.ts';
import { formatLength } from '../geometry/length.ts';
import { middleOf } from '../geometry/rectangle.ts';
import { distanceInside } from '../geometry/signed-distance.ts';
import { frameOf, rectToMm } from '../job/art-frame.ts';
import type { Job } from '../job/job.ts';
import type { CanvasSide } from '../raster/canvas-side.ts';
import type { Raster } from '../raster/raster.ts';
import { type CheckResult, defineCheck } from './define-check.ts';
import { phrasePlace } from './picture-place.ts';

const LENGTH = practiceLimit('cut-off-length');
const MISSING = practiceLimit('cut-off-missing');

interface Inputs {
  readonly job: Job;
  readonly raster: Raster;
}

export default defineCheck<Inputs>({
  id: 'cut-off-edge',
  title: 'Art cut off by its canvas',
  reason: 'A glow, a shadow or a subject that the canvas cuts off ends on the blank in a straight line.',
  source: [
    `a straight end of at least ${LENGTH.value} mm along the canvas, beyond which at least ${MISSING.value} mm are missing (common practice, no source)`,
    'a glow is cut where it ends half faded, a shape where its outline meets the canvas aslant; art that touches all four sides was trimmed (own choice)',
  ],
  // Advice: how many of its alarms on real art are false stands in tests/rates/real.md.
  codes: { 'cut-glow': ['advice'], 'cut-shape': ['advice'] },
  needs: ({ artwork: { raster }, job }) => {
    if (job === null) return { skip: 'nothing is visible, so nothing is cut off' };
    if (raster.hasAlpha && raster.model === 'cmyk') return { skip: 'edges in art of inks are not judged' };
    return { inputs: { job, raster } };
  },
  run: judge,
  phrases: {
    'cut-glow': ({ facts, place }) =>
      `A glow or shadow stops before it has faded: the canvas cuts it off in a straight line of ${formatLength(Number(facts.lengthMm))}, its middle ${phrasePlace(place)}. Export the art anew on a larger canvas, or place it so that this line lies beyond the edge of the blank.`,
    'cut-shape': ({ facts, place }) =>
      `The art ends in a straight line of ${formatLength(Number(facts.lengthMm))} where the canvas ends, its middle ${phrasePlace(place)}. If it is not meant, export the art anew on a larger canvas, or place it so that this line lies beyond the edge of the blank.`,
  },
});

function judge({ job, raster }: Inputs): CheckResult {
  const frame = frameOf(job);
  const pixelMm = rectToMm(frame, { x: 0, y: 0, width: 1, height: 1 });
  const isTurned = job.turn === 90 || job.turn === 270;
  const alongMm = (side: CanvasSide) =>
    (side === 'top' || side === 'bottom') !== isTurned ? pixelMm.width : pixelMm.height;
  const acrossMm = (side: CanvasSide) =>
    (side === 'top' || side === 'bottom') !== isTurned ? pixelMm.height : pixelMm.width;
  const seen = findCutOffs(raster, {
    boxPx: job.contentBoxPx,
    lengthPx: (side) => LENGTH.value / alongMm(side) - 1e-6,
    missingPx: (side) => MISSING.value / acrossMm(side),
  })
    .map((cut) => ({ ...cut, mm: rectToMm(frame, cut.boxPx) }))
    // Beyond the edge of the blank nobody sees it.
    .filter(({ mm }) => distanceInside(job.blank.edge, middleOf(mm).x, middleOf(mm).y) > 0);
  return {
    findings: (['glow', 'shape'] as const).flatMap((what) => {
      const own = seen.filter((cut) => cut.what === what);
      const [first] = own;
      if (first === undefined) return [];
      const lengthMm = dropNoise(Math.max(first.mm.width, first.mm.height));
      return [
        {
          code: `cut-${what}`,
          severity: 'advice',
          actual: { value: lengthMm, unit: 'mm' },
          expected: { max: LENGTH.value, unit: 'mm', from: LENGTH.from },
          place: { px: first.boxPx, mm: first.mm },
          facts: { lengthMm, sidesOfCanvas: own.map(({ side }) => side).join(' and ') },
        },
      ];
    }),
  };
}
