import { formatLength } from '../geometry/length.ts';
import type { PointPx } from '../geometry/rectangle.ts';
import type { Job } from '../job/job.ts';
import { bleedBoxOf, TOUCH_MM } from '../job/lines.ts';
import type { Raster } from '../raster/raster.ts';
import { defineCheck } from './define-check.ts';
import { placeOfReadings, scaleToReach, shareOfEdge } from './edge-places.ts';
import { type EdgeReading, readEdge } from './edge-profile.ts';
import { type CloseReading, isClose, widthThatPasses, widthWithinSafe } from './edge-remedy.ts';
import { formatGap, phraseGaps, type Side, worstPerSide } from './sides.ts';

export default defineCheck<{
  readonly job: Job;
  readonly raster: Raster;
  readonly rimPx: readonly PointPx[];
}>({
  id: 'safe-area',
  title: 'Art inside the safe line',
  reason:
    'Art that ends between the safe line and the edge shows every millimetre of misplacement as an uneven border.',
  source: [
    'derived: placement 1.5 + half the size error 0.5 + half the scale error 0.3 + rotation of 0.5 degrees 0.87 = 3.17 mm on 200 mm (inputs common practice, no source)',
    'safe inset of the blank (common practice, no source)',
  ],
  codes: { 'too-close': ['warning'] },
  needs: ({ job, artwork, rimPx }) =>
    job === null
      ? { skip: 'nothing is visible, so nothing is near the edge' }
      : { inputs: { job, raster: artwork.raster, rimPx } },
  run: ({ job, raster, rimPx }) => {
    const { safe } = job.blank;
    const edge = readEdge(job, raster);
    const cut = sidesCut(job, edge);
    const close = edge.filter(isClose).filter(({ side }) => !cut.has(side));
    if (close.length === 0) return { findings: [] };
    const widthMm = findWidth(job, raster, rimPx, close);
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
            bleeds: job.blank.bleed.value > 0,
            sharePercent: shareOfEdge(edge, close),
            ...(widthMm === null ? {} : { widthToClearMm: widthMm }),
          },
        },
      ],
    };
  },
  phrases: {
    'too-close': ({ actual, expected, facts }) =>
      `The art ends ${formatGap(actual!.value)} from the edge at the closest place (${phraseGaps(facts)}), expected ${formatLength(expected!.min!)} or more: a small placement error will show. ${typeof facts.widthToClearMm === 'number' ? `Print it at most ${formatLength(facts.widthToClearMm)} wide` : 'Move it with --offset'}${facts.bleeds ? ', or let it run over the edge with its full bleed' : ''}.`,
  },
});

/** The sides on which the art hangs over the bleed line and is cut: what of it ends near the edge there is no border. */
function sidesCut({ blank, placementMm }: Job, edge: readonly EdgeReading[]): ReadonlySet<Side> {
  const canvas = bleedBoxOf(blank);
  const beyond = {
    left: canvas.x - placementMm.x,
    right: placementMm.x + placementMm.width - canvas.x - canvas.width,
    top: canvas.y - placementMm.y,
    bottom: placementMm.y + placementMm.height - canvas.y - canvas.height,
  };
  const runsOver = (side: Side) =>
    edge.some(
      (one) => one.side === side && one.reachMm !== null && one.reachMm >= blank.bleed.value - TOUCH_MM,
    );
  const sides = ['left', 'right', 'top', 'bottom'] as const;
  return new Set(sides.filter((side) => beyond[side] > TOUCH_MM && runsOver(side)));
}

/** The largest width known to pass: scaled from what is too close, or, for art with other parts there, all of it inside. */
function findWidth(
  job: Job,
  raster: Raster,
  rimPx: readonly PointPx[],
  close: readonly CloseReading[],
): number | null {
  const scale = scaleToReach(
    job,
    close.map(({ point, clearanceMm }) => ({
      point,
      hasMm: -clearanceMm,
      wantsMm: -job.blank.safe.value,
    })),
  );
  const estimate =
    scale === null ? null : widthThatPasses(job, raster, job.placementMm.width * scale, 'down');
  return estimate ?? widthThatPasses(job, raster, widthWithinSafe(job, rimPx), 'down');
}
