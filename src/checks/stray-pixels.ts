import { practiceLimit } from '../catalogue/practice.ts';
import { findStrays, type Stray, type Strays } from '../faults/find-strays.ts';
import { formatMillimetres, formatSize } from '../geometry/length.ts';
import { frameOf, rectToMm } from '../job/art-frame.ts';
import type { Job } from '../job/job.ts';
import { strayLimitsFor } from '../job/stray-limits.ts';
import type { Raster } from '../raster/raster.ts';
import { type CheckResult, defineCheck } from './define-check.ts';
import { phrasePlace } from './picture-place.ts';

const SIZE = practiceLimit('stray-size');
const DISTANCE = practiceLimit('stray-distance');
/** Where the box shrinks by less nobody sees it (own choice). */
const SHRINKS_MM = 0.5;
/** One minute of arc at 305 mm, arm's length: what is smaller prints unseen (derived). */
const SEEN_MM = 305 * Math.tan(Math.PI / 180 / 60);
/** So many are named one by one; all are counted. */
const NAMED = 20;

interface Inputs {
  readonly job: Job;
  readonly raster: Raster;
}

export default defineCheck<Inputs>({
  id: 'stray-pixels',
  title: 'Specks away from the design',
  reason:
    'A speck left by a cut-out prints as a dot, and enlarges the box by which art is sized and centred, so that the design comes out smaller and off its place.',
  source: [
    `separate parts up to ${SIZE.value} mm, at least ${DISTANCE.value} mm from the design (common practice, no source); four or more solid ones of 0.4 mm are a pattern (own choice)`,
    'one minute of arc at arm’s length (derived)',
  ],
  // Advice: how many of its alarms on real art are false stands in tests/rates/real.md.
  codes: { 'enlarges-box': ['advice'], specks: ['advice'] },
  needs: ({ artwork, job }) =>
    job === null
      ? { skip: 'nothing is visible, so nothing strays' }
      : { inputs: { job, raster: artwork.raster } },
  run: judge,
  phrases: {
    'enlarges-box': ({ facts, place }) =>
      `${phraseCount(facts.count)} away from the design ${facts.count === 1 ? 'prints as a dot and enlarges' : 'print as dots and enlarge'} its box: without, it is ${formatSize(Number(facts.keptWidthMm), Number(facts.keptHeightMm))} instead of ${formatSize(Number(facts.boxWidthMm), Number(facts.boxHeightMm))}, and the design can be larger and is centred. The largest is ${formatMillimetres(Number(facts.largestMm))} long, ${phrasePlace(place)}. Erase them, or use --mend drop-strays.`,
    specks: ({ facts, place }) =>
      `${phraseCount(facts.count)} away from the design ${facts.count === 1 ? 'prints as a dot' : 'print as dots'}; the largest is ${formatMillimetres(Number(facts.largestMm))} long, ${phrasePlace(place)}. If not meant, erase them, or use --mend drop-strays.`,
  },
});

function phraseCount(count: unknown): string {
  return count === 1 ? 'A speck' : `${count} specks`;
}

function judge({ job, raster }: Inputs): CheckResult {
  const strays = findStrays(raster, strayLimitsFor(job));
  if (strays === null) return { findings: [] };
  const frame = frameOf(job);
  const boxesMm = strays.strays.map(({ boxPx }) => rectToMm(frame, boxPx));
  const longest = (i: number) => Math.max(boxesMm[i]!.width, boxesMm[i]!.height);
  const largest = boxesMm.reduce((best, _, i) => (longest(i) > longest(best) ? i : best), 0);
  const kept = rectToMm(frame, strays.keptBoxPx);
  const box = job.placementMm;
  const enlarges = box.width - kept.width >= SHRINKS_MM || box.height - kept.height >= SHRINKS_MM;
  if (!enlarges && longest(largest) < SEEN_MM) return { findings: [] };
  return {
    findings: [
      {
        code: enlarges ? 'enlarges-box' : 'specks',
        severity: 'advice',
        actual: { value: longest(largest), unit: 'mm' },
        place: { px: strays.strays[largest]!.boxPx, mm: boxesMm[largest]! },
        facts: {
          count: strays.strays.length,
          largestMm: longest(largest),
          boxWidthMm: box.width,
          boxHeightMm: box.height,
          keptWidthMm: kept.width,
          keptHeightMm: kept.height,
          specks: nameSome(strays, boxesMm),
        },
      },
    ],
  };
}

function nameSome({ strays }: Strays, boxesMm: readonly Stray['boxPx'][]) {
  return strays.slice(0, NAMED).map(({ pixels }, i) => {
    const { x, y, width, height } = boxesMm[i]!;
    return { xMm: x, yMm: y, widthMm: width, heightMm: height, pixels };
  });
}
