import { findThinStrokes } from '../faults/thin-strokes.ts';
import { formatLength } from '../geometry/length.ts';
import type { Job, Limit } from '../job/job.ts';
import { type ConnectedArea, findConnectedAreas } from '../raster/connected-areas.ts';
import { makeLumaPlane } from '../raster/luma-plane.ts';
import type { Raster } from '../raster/raster.ts';
import { type CheckResult, defineCheck, type PrintPicture } from './define-check.ts';
import type { Finding } from './finding.ts';
import { areaOfPixels, phrasePlace, placeInPicture } from './picture-place.ts';

/** A stroke is at least this many times as long as the limit is wide (own choice): shorter things are dots and corners. */
const LENGTH = 3;
/** All of them together are at least this many: of 71 alarms on real art for less, as the tips of wedges and gleams, most were false. */
const IN_ALL = 6;
/** Own choice: a width on the limit is not thin for the noise of pixels. */
const SLACK = 0.95;

interface Inputs {
  readonly job: Job;
  readonly picture: PrintPicture;
  readonly artwork: Raster;
  readonly strokes: NonNullable<Job['blank']['smallestStroke']>;
}

export default defineCheck<Inputs>({
  id: 'thin-detail',
  title: 'Strokes and gaps too fine for the blank',
  reason:
    'Dye spreads as gas while it is pressed: hairlines and small lettering go pale or vanish, and light strokes in dark ground fill in.',
  source: [
    'smallest strokes of the family in seeds/families.json (common practice, no source)',
    'luma by ITU-R BT.709-6, 3.2; strokes of 60 in 255 beside an even ground, three times as long as the limit (own choice)',
  ],
  // Advice: how many of its alarms on real art are false stands in tests/rates/real.md.
  // It does not see strokes that differ from their ground in hue only, nor strokes packed closer than they are wide, whose ground is never even.
  codes: { 'thin-strokes': ['advice'], 'thin-gaps': ['advice'] },
  needs: ({ job, picture, artwork }) => {
    if (job === null || picture === null) return { skip: 'nothing is visible, so there is no detail' };
    if (picture.raster.model === 'cmyk') return { skip: 'detail in art of inks is not judged' };
    const strokes = job.blank.smallestStroke;
    if (strokes === null) return { skip: 'the smallest stroke of this kind of blank is not known' };
    return { inputs: { job, picture, artwork: artwork.raster, strokes } };
  },
  run: judge,
  phrases: {
    'thin-strokes': (finding) => phrase(finding, 'Strokes', 'they come out pale or broken'),
    'thin-gaps': (finding) => phrase(finding, 'Light strokes or gaps in dark ground', 'they fill in'),
  },
});

function judge(inputs: Inputs): CheckResult {
  const { raster } = inputs.picture;
  const plane = { widthPx: raster.widthPx, heightPx: raster.heightPx, codes: makeLumaPlane(raster) };
  const find = (code: string, tone: 'dark' | 'light', limit: Limit): Finding[] => {
    const limitPx = limit.value / inputs.picture.pixelMm;
    const mask = findThinStrokes(plane, { tone, belowPx: limitPx * SLACK });
    const areas = findConnectedAreas(mask, raster.widthPx).filter(
      ({ boxPx }) => Math.hypot(boxPx.width, boxPx.height) >= LENGTH * limitPx,
    );
    const lengthPx = areas.reduce((sum, { boxPx }) => sum + Math.hypot(boxPx.width, boxPx.height), 0);
    return lengthPx < IN_ALL * limitPx ? [] : [describe(inputs, code, limit, areas)];
  };
  return {
    findings: [
      ...find('thin-strokes', 'dark', inputs.strokes.positive),
      ...find('thin-gaps', 'light', inputs.strokes.reversed),
    ],
  };
}

function describe(
  { picture, job, artwork }: Inputs,
  code: string,
  limit: Limit,
  areas: readonly ConnectedArea[],
): Finding {
  const { widthPx, heightPx } = picture.raster;
  const pixels = areas.reduce((sum, area) => sum + area.pixels, 0);
  const [largest] = areas;
  return {
    code,
    severity: 'advice',
    expected: { min: limit.value, unit: 'mm', from: limit.from },
    place: placeInPicture(picture, largest!.boxPx, job, artwork),
    facts: {
      count: areas.length,
      areaMm2: areaOfPixels(picture, pixels),
      sharePercent: (100 * pixels) / (widthPx * heightPx),
    },
  };
}

function phrase({ expected, facts, place }: Finding, what: string, effect: string): string {
  const pieces = facts.count === 1 ? 'in one piece' : `in ${facts.count} pieces, the largest`;
  return `${what} thinner than ${formatLength(expected!.min!)} at this print size, ${pieces} about ${phrasePlace(place)}: ${effect} on this kind of blank. Print the art larger, or draw them thicker.`;
}
