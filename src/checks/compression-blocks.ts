import { practiceLimit } from '../catalogue/practice.ts';
import { findBlockGrid } from '../faults/block-grid.ts';
import { measureBlockSteps } from '../faults/block-steps.ts';
import { formatLength, MM_PER_INCH } from '../geometry/length.ts';
import type { RectPx } from '../geometry/rectangle.ts';
import { frameOf, rectToMm, rectToPx } from '../job/art-frame.ts';
import type { Job } from '../job/job.ts';
import { bleedBoxOf } from '../job/lines.ts';
import { findConnectedAreas } from '../raster/connected-areas.ts';
import { readLightnessLines } from '../raster/lightness-lines.ts';
import type { Raster } from '../raster/raster.ts';
import { type CheckResult, defineCheck } from './define-check.ts';
import { clipToPixels } from './edge-places.ts';
import { phrasePlace } from './picture-place.ts';

const STEP = practiceLimit('visible-step');
const SHARE = practiceLimit('block-share');
/** Steps on the grid are this many times those inside the blocks (own choice): below, the texture of the art hides them. */
const OVER_TEXTURE = 3;
/** Rows, and columns, that are looked at: six and more a tile of the largest pictures that are read (own choice). */
const MOST_LINES = 384;
/** The eye tells two lines apart that are one minute of arc from each other: a period is two. */
const PERIOD_ARC_MINUTES = 2;

interface Inputs {
  readonly job: Job;
  readonly artwork: Raster;
}

export default defineCheck<Inputs>({
  id: 'compression-blocks',
  title: 'Blocks of strong compression',
  reason:
    'A picture that was saved small falls into squares of even tone; on a hard glossy blank they show like tiles, most of all in skies and skin.',
  source: [
    'blocks of 8 x 8 samples: ITU-T T.81, A.3.3',
    `steps of more than ${STEP.value} L* (CIE 15) over those inside the blocks, root mean square, on ${SHARE.value} % of the art (common practice, no source)`,
    'a period of two minutes of arc at the view distance of the family (seeds/families.json) is seen: one minute of arc is normal acuity (ISO 8596, from memory)',
  ],
  // Advice: how many of its alarms on real art are false stands in tests/rates/real.md.
  // It misses art of which nothing but even blocks is left.
  codes: { visible: ['advice'] },
  needs: ({ job, artwork }) => {
    if (job === null) return { skip: 'nothing is visible, so no blocks are' };
    if (artwork.vector !== null && artwork.vector.pictures.length + artwork.vector.unplacedPictures === 0)
      return { skip: 'a drawing without pictures in it was never compressed so' };
    if (artwork.raster.model === 'cmyk') return { skip: 'blocks in art of inks are not judged' };
    return { inputs: { job, artwork: artwork.raster } };
  },
  run: judge,
  phrases: {
    visible: ({ actual, facts, place }) =>
      `${Math.round(Number(facts.sharePercent))} % of the art falls into blocks of ${formatLength(Number(facts.pitchMm))} (${Number(facts.pitchPx).toFixed(1)} px) with steps of ${actual!.value.toFixed(1)} L* between them, most about ${phrasePlace(place)}: it was compressed too much before. Ask for the original file, or print it so small that it does not matter.`,
  },
});

function judge({ job, artwork }: Inputs): CheckResult {
  const boxPx = printedBoxPx(job, artwork);
  const rows = readLightnessLines(artwork, boxPx, 'x', MOST_LINES);
  const columns = readLightnessLines(artwork, boxPx, 'y', MOST_LINES);
  const grid = findBlockGrid(rows, columns);
  if (grid === null) return { findings: [] };
  const pitchMm = (grid.pitchPx / job.effectivePpi.x) * MM_PER_INCH;
  const steps = measureBlockSteps([rows, columns], grid);
  const seen = steps.onLines.map((step, i) => (isSeen(step, steps.inside[i]!) ? 1 : 0));
  const sharePercent = (100 * countOnes(seen)) / Math.max(1, steps.measured);
  const facts = { pitchPx: grid.pitchPx, pitchMm, sharePercent };
  const isGrid = sharePercent >= SHARE.value && !steps.isFlatInside;
  if (!isGrid || pitchMm < smallestPeriodMm(job)) return { findings: [], facts };
  const { boxPx: tiles } = findConnectedAreas(Uint8Array.from(seen), steps.columns)[0]!;
  const px = clipToPixels(
    {
      x: boxPx.x + tiles.x * steps.tilePx,
      y: boxPx.y + tiles.y * steps.tilePx,
      width: tiles.width * steps.tilePx,
      height: tiles.height * steps.tilePx,
    },
    artwork,
  );
  return {
    findings: [
      {
        code: 'visible',
        severity: 'advice',
        actual: { value: meanWhere(steps.onLines, seen), unit: 'L*' },
        expected: { max: STEP.value, unit: 'L*', from: STEP.from },
        place: { px, mm: rectToMm(frameOf(job), px) },
        facts,
      },
    ],
  };
}

function isSeen(step: number, inside: number): boolean {
  return step - inside >= STEP.value && step >= OVER_TEXTURE * inside;
}

/** The shortest period that is seen as one at the view distance of the blank. */
function smallestPeriodMm({ blank }: Job): number {
  return blank.viewDistanceMm * Math.tan((PERIOD_ARC_MINUTES / 60) * (Math.PI / 180));
}

/** The part of the artwork that comes on to the blank, bleed included, in whole pixels. */
function printedBoxPx(job: Job, artwork: Raster): RectPx {
  const bleed = clipToPixels(rectToPx(frameOf(job), bleedBoxOf(job.blank)), artwork);
  const { contentBoxPx: content } = job;
  const x = Math.max(bleed.x, content.x);
  const y = Math.max(bleed.y, content.y);
  const width = Math.min(bleed.x + bleed.width, content.x + content.width) - x;
  const height = Math.min(bleed.y + bleed.height, content.y + content.height) - y;
  return { x, y, width: Math.max(0, width), height: Math.max(0, height) };
}

function countOnes(mask: Float64Array): number {
  return mask.reduce((sum, one) => sum + one, 0);
}

function meanWhere(values: Float64Array, mask: Float64Array): number {
  return values.reduce((sum, value, i) => sum + (mask[i] === 1 ? value : 0), 0) / countOnes(mask);
}
