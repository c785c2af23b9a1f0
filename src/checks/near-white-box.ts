import { practiceLimit } from '../catalogue/practice.ts';
import { type BoxStep, measureBoxStep } from '../faults/box-step.ts';
import { findFlatBox } from '../faults/flat-box.ts';
import { formatArea } from '../geometry/area.ts';
import { dropNoise } from '../geometry/drop-noise.ts';
import type { IccProfile } from '../icc/profile.ts';
import { SRGB_PROFILE } from '../icc/srgb-profile.ts';
import { frameOf, rectToMm } from '../job/art-frame.ts';
import { coversBlank } from '../job/covers-blank.ts';
import type { Job } from '../job/job.ts';
import { pixelAreaOf } from '../job/pixel-area.ts';
import type { Raster } from '../raster/raster.ts';
import { type CheckResult, defineCheck } from './define-check.ts';
import type { Finding } from './finding.ts';

const AREA = practiceLimit('flat-box-area');
const STEP = practiceLimit('visible-step');

interface Inputs {
  readonly job: Job;
  readonly raster: Raster;
  readonly source: IccProfile;
}

export default defineCheck<Inputs>({
  id: 'near-white-box',
  title: 'Flat box behind the subject',
  reason:
    'A ground that is nearly white looks white on a screen and prints as a faint rectangle; a coloured one prints as a box.',
  source: [
    `${STEP.value} L* (CIE 15:2018) or ${STEP.value} dE00 (ISO/CIE 11664-6) beside the bare base, over ${AREA.value} mm2 (common practice, no source)`,
    'nearly white: at least L* 94 and at most chroma 5 (own choice)',
  ],
  // Advice: how many of its alarms on real art are false stands in tests/rates/real.md.
  codes: { 'near-white': ['advice'], 'flat-box': ['advice'] },
  needs: ({ artwork, job }) =>
    job === null
      ? { skip: 'nothing is visible, so there is no box' }
      : {
          inputs: { job, raster: artwork.raster, source: artwork.ownColours?.profile ?? SRGB_PROFILE },
        },
  run: judge,
  phrases: {
    'near-white': ({ facts }) =>
      facts.covers === true
        ? `The ground is nearly white, ${phraseStep(facts)}: the whole blank will carry a faint tone. If white is meant, use --mend whiten-box.`
        : `The subject stands on a nearly white box, ${phraseStep(facts)}, which prints as a faint rectangle of ${formatArea(Number(facts.areaMm2))}. Make it pure white with --mend whiten-box, or clear with --mend clear-box.`,
    'flat-box': ({ facts }) =>
      `The subject stands on a box of one colour, ${phraseStep(facts)}, which prints as a rectangle of ${formatArea(Number(facts.areaMm2))} and ends on the blank. If it is not meant, use --mend clear-box; if it is meant to be the ground, let it cover the blank with --fit cover.`,
  },
});

function phraseStep(facts: Finding['facts']): string {
  return `${Number(facts.lightnessStep).toFixed(1)} L* and ${Number(facts.deltaE00).toFixed(1)} dE00 from the bare blank`;
}

function judge({ job, raster, source }: Inputs): CheckResult {
  let step: BoxStep | null = null;
  const box = findFlatBox(raster, job.contentBoxPx, (colour) => {
    step = measureBoxStep(colour, source, job.blank.baseColour);
    return step.visible;
  });
  if (box === null || step === null) return { findings: [] };
  const { lightnessStep, deltaE00, nearWhite }: BoxStep = step;
  const { contentBoxPx } = job;
  const areaMm2 = dropNoise(box.pixels * pixelAreaOf(job));
  const covers = coversBlank(job);
  // A coloured ground that leaves no edge on the blank is a design.
  if (areaMm2 < AREA.value || (covers && !nearWhite)) return { findings: [] };
  return {
    findings: [
      {
        code: nearWhite ? 'near-white' : 'flat-box',
        severity: 'advice',
        actual: { value: deltaE00, unit: 'dE00' },
        expected: { max: STEP.value, unit: 'dE00', from: STEP.from },
        place: { px: contentBoxPx, mm: rectToMm(frameOf(job), contentBoxPx) },
        facts: { lightnessStep, deltaE00, areaMm2, covers },
      },
    ],
  };
}
