import { MM_PER_INCH } from '../geometry/length.ts';
import type { PointPx, RectMm } from '../geometry/rectangle.ts';
import type { Shape } from '../geometry/shape.ts';
import { distanceInside } from '../geometry/signed-distance.ts';
import { frameOf } from '../job/art-frame.ts';
import type { Job } from '../job/job.ts';
import { bleedBoxOf, marginWithinBleed, TOUCH_MM } from '../job/lines.ts';
import type { Finding } from './finding.ts';
import { type Side, sideOf, worstPerSide } from './sides.ts';
import { placingForRound } from './wrap-remedy.ts';

/** A bleed that was made for this blank is made of whole pixels: the diagonal of one may hang over the line. */
export function allowedOverhang({ effectivePpi }: Job, mends: readonly string[] = []): number {
  const { x, y } = effectivePpi;
  return mends.includes('extend-edges') ? MM_PER_INCH * Math.hypot(1 / x, 1 / y) + TOUCH_MM : TOUCH_MM;
}

/** Art of which something lies beyond the bleed line, and art that lies beside the blank altogether, as data. */
export function findCutArt(job: Job, rimPx: readonly PointPx[], overhangMm: number): Finding[] {
  const { blank, placementMm } = job;
  const canvas = bleedBoxOf(blank);
  const facts = {
    widthMm: placementMm.width,
    heightMm: placementMm.height,
    canvasWidthMm: canvas.width,
    canvasHeightMm: canvas.height,
  };
  const place = { px: job.contentBoxPx, mm: placementMm };
  if (!overlap(placementMm, canvas)) return [{ code: 'off-blank', severity: 'error', place, facts }];
  const beyond = measureOverhang(job, rimPx).filter(({ value }) => value > overhangMm);
  if (beyond.length === 0) return [];
  const covering = job.fit === 'cover';
  return [
    {
      code: covering ? 'cut' : 'larger-than-blank',
      severity: covering ? 'advice' : 'warning',
      actual: { value: beyond.reduce((most, { value }) => Math.max(most, value), 0), unit: 'mm' },
      expected: { max: 0, unit: 'mm', from: blank.bleed.from },
      place,
      facts: { ...worstPerSide(beyond, 'largest'), ...facts, ...placingForRound(job) },
    },
  ];
}

/**
 * How far each point lies beyond the bleed line. On a blank with four sides the arcs that the line makes round its
 * corners do not count: nobody misses what art of just the right size loses there, outside the edge.
 */
function measureOverhang(
  job: Job,
  rimPx: readonly PointPx[],
): { readonly side: Side; readonly value: number }[] {
  const { blank } = job;
  const frame = frameOf(job);
  const { box, kind } = blank.edge;
  const canvas = bleedBoxOf(blank);
  const foursquare: Shape = { kind: 'rect', box: canvas };
  return rimPx.map((point) => {
    const { x, y } = frame.toMm(point);
    const across = (x - box.x - box.width / 2) / box.width;
    const down = (y - box.y - box.height / 2) / box.height;
    // Doubles may tip the very corner of square art to either side.
    const side = Math.abs(Math.abs(across) - Math.abs(down)) < 1e-9 ? 'corners' : sideOf(across, down);
    const margin =
      kind === 'rect' || kind === 'rounded-rect'
        ? distanceInside(foursquare, x, y)
        : marginWithinBleed(blank, x, y);
    return { side, value: -margin };
  });
}

function overlap(a: RectMm, b: RectMm): boolean {
  return a.x < b.x + b.width && b.x < a.x + a.width && a.y < b.y + b.height && b.y < a.y + a.height;
}
