import { practiceLimit } from '../catalogue/practice.ts';
import { formatLength } from '../geometry/length.ts';
import { growBox, type PointPx } from '../geometry/rectangle.ts';
import { distanceInside } from '../geometry/signed-distance.ts';
import { frameOf, rectToPx } from '../job/art-frame.ts';
import type { Hole, Job } from '../job/job.ts';
import { type ArtTest, makeArtTest } from '../raster/art-test.ts';
import type { Raster } from '../raster/raster.ts';
import { defineCheck } from './define-check.ts';
import { clipToPixels } from './edge-places.ts';
import type { Finding } from './finding.ts';
import { type Clears, findClearingOffset, findClearingWidth } from './keep-out-remedy.ts';

const KEEP_OUT = practiceLimit('keep-out');
const KEEP_OUT_MM = KEEP_OUT.value;

export default defineCheck<{
  readonly job: Job;
  readonly raster: Raster;
  readonly rimPx: readonly PointPx[];
}>({
  id: 'keep-out',
  title: 'Holes and what surrounds them',
  reason: 'Art under a hole is lost, and what touches its rim is hidden by the ring, hook or screw.',
  source: [
    'hole sizes and places of the blank (seeds/blanks.json)',
    `hole and ${KEEP_OUT_MM} mm round it (common practice, no source)`,
  ],
  codes: { 'under-hole': ['warning', 'advice'] },
  needs: ({ job, artwork, rimPx }) =>
    job === null
      ? { skip: 'nothing is visible, so nothing lies under a hole' }
      : { inputs: { job, raster: artwork.raster, rimPx } },
  run: ({ job, raster, rimPx }) => {
    const isArt = makeArtTest(raster, { from: 'visible', whiteIsNoArt: job.blank.whiteBase });
    const covered = job.blank.holes
      .map((hole) => ({ hole, share: measureShare(job, isArt, hole) }))
      .filter(({ share }) => share > 0);
    if (covered.length === 0) return { findings: [] };
    const partly = covered.some(({ share }) => share < 1);
    const clears: Clears = (placementMm) =>
      job.blank.holes.every((hole) => measureShare({ ...job, placementMm }, isArt, hole) === 0);
    const width = partly ? findClearingWidth(job, isArt, KEEP_OUT_MM, clears) : null;
    const offset = partly ? findClearingOffset(job, isArt, KEEP_OUT_MM, rimPx, clears) : null;
    const remedy = {
      ...(width === null ? {} : { widthToClearMm: width }),
      ...(offset === null ? {} : { offsetXMm: offset.x, offsetYMm: offset.y }),
    };
    return { findings: covered.map(({ hole, share }) => describe(job, raster, hole, share, remedy)) };
  },
  phrases: {
    'under-hole': ({ actual, facts }) =>
      actual!.value >= 100
        ? `The art runs right across the ${facts.use} hole and the ${formatLength(Number(facts.keepOutMm))} round it, as a background does. Look whether anything important is lost there.`
        : `The art covers ${actual!.value < 1 ? 'under 1' : Math.floor(actual!.value)} % of the ${facts.use} hole and the ${formatLength(Number(facts.keepOutMm))} round it: that part is lost or hidden. ${phraseRemedy(facts)}`,
  },
});

/** Share of the hole's zone that art covers, 0…1, by the middles of the artwork's pixels. */
function measureShare(job: Job, isArt: ArtTest, hole: Hole): number {
  const frame = frameOf(job);
  const zone = rectToPx(frame, growBox(hole.shape.box, KEEP_OUT_MM));
  let inside = 0;
  let art = 0;
  for (let y = Math.floor(zone.y); y < zone.y + zone.height; y += 1) {
    for (let x = Math.floor(zone.x); x < zone.x + zone.width; x += 1) {
      const middle = frame.toMm({ x: x + 0.5, y: y + 0.5 });
      if (distanceInside(hole.shape, middle.x, middle.y) < -KEEP_OUT_MM) continue;
      inside += 1;
      if (isArt(x, y)) art += 1;
    }
  }
  return inside === 0 ? 0 : art / inside;
}

function describe(job: Job, raster: Raster, hole: Hole, share: number, remedy: Finding['facts']): Finding {
  const mm = growBox(hole.shape.box, KEEP_OUT_MM);
  return {
    code: 'under-hole',
    severity: share < 1 ? 'warning' : 'advice',
    actual: { value: share * 100, unit: 'percent' },
    expected: { max: 0, unit: 'percent', from: KEEP_OUT.from },
    place: { mm, px: clipToPixels(rectToPx(frameOf(job), mm), raster) },
    facts: { use: hole.use, keepOutMm: KEEP_OUT_MM, ...(share < 1 ? remedy : {}) },
  };
}

function phraseRemedy(facts: Finding['facts']): string {
  const ways: string[] = [];
  if (typeof facts.widthToClearMm === 'number')
    ways.push(`print it at most ${formatLength(facts.widthToClearMm)} wide`);
  if (typeof facts.offsetXMm === 'number' && typeof facts.offsetYMm === 'number')
    ways.push(`move it with --offset ${facts.offsetXMm}mm,${facts.offsetYMm}mm`);
  if (ways.length === 0)
    return 'No smaller size and no offset within the safe line would clear it: choose art with room there.';
  const sentence = ways.join(', or ');
  return `${sentence.charAt(0).toUpperCase()}${sentence.slice(1)}.`;
}
