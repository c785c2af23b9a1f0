import { practiceLimit } from '../catalogue/practice.ts';
import { findVeils } from '../faults/find-veils.ts';
import { formatArea } from '../geometry/area.ts';
import { formatSize } from '../geometry/length.ts';
import type { IccProfile } from '../icc/profile.ts';
import { SRGB_PROFILE } from '../icc/srgb-profile.ts';
import { frameOf, rectToMm } from '../job/art-frame.ts';
import type { Job } from '../job/job.ts';
import { pixelAreaOf } from '../job/pixel-area.ts';
import type { Raster } from '../raster/raster.ts';
import { type CheckResult, defineCheck } from './define-check.ts';
import { phrasePlace } from './picture-place.ts';

const ALPHA = practiceLimit('haze-alpha').value;
const MEAN = practiceLimit('haze-mean').value;
const FLAT = practiceLimit('haze-flatness').value;
const AREA = practiceLimit('haze-area');
const STEP = practiceLimit('visible-step').value;

interface Inputs {
  readonly job: Job;
  readonly raster: Raster;
  readonly source: IccProfile;
}

export default defineCheck<Inputs>({
  id: 'alpha-haze',
  title: 'Haze left by a cut-out',
  reason:
    'Removing a background often leaves a veil too faint for a screen; dye shows it as a dirty patch with an end on the bare blank.',
  source: [
    `alpha of 1 to ${ALPHA} in 255, on the average at most ${MEAN}, even to ${FLAT}, over ${AREA.value} mm2 (common practice, no source)`,
    `${STEP} L* (CIE 15:2018) beside the bare base (common practice, no source)`,
    'a veil ends where a glow or a shadow fades (own choice)',
  ],
  // Advice: how many of its alarms on real art are false stands in tests/rates/real.md.
  codes: { veil: ['advice'] },
  needs: ({ artwork, job }) => {
    if (job === null) return { skip: 'nothing is visible, so there is no haze' };
    if (artwork.raster.hasAlpha && artwork.raster.model === 'cmyk')
      return { skip: 'haze in art of inks is not judged' };
    return { inputs: { job, raster: artwork.raster, source: artwork.ownColours?.profile ?? SRGB_PROFILE } };
  },
  run: judge,
  phrases: {
    veil: ({ facts, place }) =>
      `${facts.count === 1 ? 'A veil' : `${facts.count} veils`} of ${formatArea(Number(facts.areaMm2))}, hardly seen on a screen (alpha ${Number(facts.alpha).toFixed(1)} of 255), ${facts.count === 1 ? 'prints' : 'print'} ${Number(facts.lightnessStep).toFixed(1)} L* darker than the bare blank. ${facts.count === 1 ? 'It lies' : 'The largest lies'} within ${formatSize(Number(facts.widthMm), Number(facts.heightMm))}, its middle ${phrasePlace(place)}. Take it away with --mend clear-haze.`,
  },
});

function judge({ job, raster, source }: Inputs): CheckResult {
  const found = findVeils(raster, {
    boxPx: job.contentBoxPx,
    pixelMm2: pixelAreaOf(job),
    source,
    base: job.blank.baseColour,
  });
  if (found === null) return { findings: [] };
  const { veils } = found;
  const { boxPx, alpha } = veils[0]!;
  const areaMm2 = veils.reduce((sum, veil) => sum + veil.areaMm2, 0);
  const mm = rectToMm(frameOf(job), boxPx);
  return {
    findings: [
      {
        code: 'veil',
        severity: 'advice',
        actual: { value: areaMm2, unit: 'mm2' },
        expected: { max: AREA.value, unit: 'mm2', from: AREA.from },
        place: { px: boxPx, mm },
        facts: {
          count: veils.length,
          areaMm2,
          alpha,
          lightnessStep: Math.max(...veils.map(({ lightnessStep }) => lightnessStep)),
          widthMm: mm.width,
          heightMm: mm.height,
        },
      },
    ],
  };
}
