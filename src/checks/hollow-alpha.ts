import { practiceLimit } from '../catalogue/practice.ts';
import { findHollows, type Hollow } from '../faults/find-hollows.ts';
import { findRaggedHoles, type RaggedHole } from '../faults/find-ragged-holes.ts';
import { formatArea } from '../geometry/area.ts';
import { formatSize } from '../geometry/length.ts';
import type { IccProfile } from '../icc/profile.ts';
import { SRGB_PROFILE } from '../icc/srgb-profile.ts';
import { frameOf, rectToMm } from '../job/art-frame.ts';
import type { Job } from '../job/job.ts';
import { pixelAreaOf } from '../job/pixel-area.ts';
import type { Raster } from '../raster/raster.ts';
import { type CheckResult, defineCheck } from './define-check.ts';
import type { Finding } from './finding.ts';
import { phrasePlace } from './picture-place.ts';

const LEAST = practiceLimit('nearly-opaque').value;
const AREA = practiceLimit('hollow-area');
const STEP = practiceLimit('visible-step').value;
/** Smaller openings are grain of the art (own choice). */
const HOLE_MM = 1;

interface Inputs {
  readonly job: Job;
  readonly raster: Raster;
  readonly source: IccProfile;
}

export default defineCheck<Inputs>({
  id: 'hollow-alpha',
  title: 'Art that is not quite opaque, and holes of a bad cut-out',
  reason:
    'Art at 250 of 255 looks solid on a screen, but the base shines through; a cut-out that ate into the subject leaves bare patches with a ragged rim.',
  source: [
    `alpha of ${LEAST} to 254 in 255, over ${AREA.value} mm2 (common practice, no source), where it changes the print by ${STEP} L* (CIE 15:2018) or ${STEP} dE00 (ISO/CIE 11664-6)`,
    `holes of at least ${HOLE_MM} mm with a grainy rim of partial alpha; clean and soft rims are meant (own choice)`,
  ],
  // Advice: how many of its alarms on real art are false stands in tests/rates/real.md.
  codes: { 'almost-opaque': ['advice'], 'ragged-holes': ['advice'] },
  needs: ({ artwork, job }) => {
    if (job === null) return { skip: 'nothing is visible, so nothing is hollow' };
    if (artwork.raster.hasAlpha && artwork.raster.model === 'cmyk')
      return { skip: 'alpha in art of inks is not judged' };
    return { inputs: { job, raster: artwork.raster, source: artwork.ownColours?.profile ?? SRGB_PROFILE } };
  },
  run: judge,
  phrases: {
    'almost-opaque': ({ facts, place }) =>
      `${formatArea(Number(facts.areaMm2))} of the art are almost, but not quite opaque (alpha ${Number(facts.alpha).toFixed(1)} of 255): the base shines through, and the print changes by ${Number(facts.deltaE00).toFixed(1)} dE00. The middle of the largest part is ${phrasePlace(place)}. If it is meant to be solid, export it without transparency.`,
    'ragged-holes': ({ facts, place }) =>
      `${facts.count === 1 ? 'A hole' : `${facts.count} holes`} with the ragged rim of a bad cut-out ${facts.count === 1 ? 'stays' : 'stay'} bare on the blank; the largest is ${formatSize(Number(facts.widthMm), Number(facts.heightMm))}, its middle ${phrasePlace(place)}. If it is not meant, cut the subject out again, or paint it in.`,
  },
});

function judge({ job, raster, source }: Inputs): CheckResult {
  const pixelMm2 = pixelAreaOf(job);
  const art = { boxPx: job.contentBoxPx, pixelMm2, source, base: job.blank.baseColour };
  const hollows = findHollows(raster, art).filter(
    ({ lightnessStep, deltaE00 }) => Math.abs(lightnessStep) >= STEP || deltaE00 >= STEP,
  );
  const holes = findRaggedHoles(raster, job.contentBoxPx, HOLE_MM / Math.sqrt(pixelMm2));
  const findings: Finding[] = [];
  if (hollows.length > 0) findings.push(almostOpaque(hollows, job));
  if (holes.length > 0) findings.push(raggedHoles(holes, job));
  return { findings };
}

function almostOpaque(hollows: readonly Hollow[], job: Job): Finding {
  const { boxPx, alpha } = hollows[0]!;
  const areaMm2 = hollows.reduce((sum, hollow) => sum + hollow.areaMm2, 0);
  const mm = rectToMm(frameOf(job), boxPx);
  return {
    code: 'almost-opaque',
    severity: 'advice',
    actual: { value: areaMm2, unit: 'mm2' },
    expected: { max: AREA.value, unit: 'mm2', from: AREA.from },
    place: { px: boxPx, mm },
    facts: {
      count: hollows.length,
      areaMm2,
      alpha,
      lightnessStep: Math.max(...hollows.map(({ lightnessStep }) => lightnessStep)),
      deltaE00: Math.max(...hollows.map(({ deltaE00 }) => deltaE00)),
      widthMm: mm.width,
      heightMm: mm.height,
    },
  };
}

function raggedHoles(holes: readonly RaggedHole[], job: Job): Finding {
  const { boxPx } = holes[0]!;
  const mm = rectToMm(frameOf(job), boxPx);
  return {
    code: 'ragged-holes',
    severity: 'advice',
    actual: { value: Math.max(mm.width, mm.height), unit: 'mm' },
    place: { px: boxPx, mm },
    facts: {
      count: holes.length,
      areaMm2: holes.reduce((sum, { pixels }) => sum + pixels, 0) * pixelAreaOf(job),
      widthMm: mm.width,
      heightMm: mm.height,
    },
  };
}
