import { practiceLimit } from '../catalogue/practice.ts';
import { formatLength, formatSize } from '../geometry/length.ts';
import type { PointPx, RectPx } from '../geometry/rectangle.ts';
import { frameOf, rectToMm, turnSize } from '../job/art-frame.ts';
import type { Job } from '../job/job.ts';
import { TOUCH_MM } from '../job/lines.ts';
import { allowedOverhang, findCutArt } from './cut-art.ts';
import { defineCheck } from './define-check.ts';
import type { Finding } from './finding.ts';
import { phraseSides } from './sides.ts';
import { findTooFineArt, phraseTooFine } from './too-fine-art.ts';

const STRETCH = practiceLimit('stretch');
const WHITE_MARGIN = practiceLimit('white-margin');

export default defineCheck<{
  readonly job: Job;
  readonly rimPx: readonly PointPx[];
  readonly inkBoxPx: RectPx | null;
  readonly overhangMm: number;
}>({
  id: 'print-size',
  title: 'Print size against the blank',
  reason:
    'Art beyond the bleed line is cut: dye there would land on the pad and ghost the next piece. Unequal scales distort faces and lettering.',
  source: [
    'derived from the placement',
    'bleed of the blank (seeds/blanks.json, seeds/families.json)',
    'smallest stroke of the family in seeds/families.json (common practice, no source)',
  ],
  codes: {
    'too-fine': ['error', 'warning'],
    'off-blank': ['error'],
    'larger-than-blank': ['warning'],
    cut: ['advice'],
    stretched: ['warning'],
    'white-margin': ['advice'],
  },
  needs: ({ job, rimPx, extents, artwork }) =>
    job === null
      ? { skip: 'nothing is visible, so there is no print size' }
      : {
          inputs: { job, rimPx, inkBoxPx: extents.inkBoxPx, overhangMm: allowedOverhang(job, artwork.mends) },
        },
  run: ({ job, rimPx, inkBoxPx, overhangMm }) => ({
    findings: [
      ...findTooFineArt(job),
      ...findCutArt(job, rimPx, overhangMm),
      ...findStretch(job),
      ...findWhiteMargin(job, inkBoxPx),
    ],
  }),
  phrases: {
    'too-fine': phraseTooFine,
    'off-blank': ({ facts }) =>
      `The art, ${size(facts)}, lies wholly beside the blank: nothing of it would print. Look at the unit and the sign of --offset.`,
    'larger-than-blank': ({ actual, facts }) =>
      `The art reaches up to ${formatLength(actual!.value)} beyond the bleed line (${phraseSides(facts)}), and what lies there is cut. It prints ${size(facts)}; the blank with its bleed is ${formatSize(Number(facts.canvasWidthMm), Number(facts.canvasHeightMm))}. ${wayBack(facts)}`,
    cut: ({ actual, facts }) =>
      `To cover the blank, up to ${formatLength(actual!.value)} of the art beyond the bleed line is cut (${phraseSides(facts)}). Look whether anything important is lost there; --offset moves the art.`,
    'white-margin': ({ facts }) =>
      `White at the rim of the art counts in its size but prints nothing: of ${size(facts)} only ${formatSize(Number(facts.inkWidthMm), Number(facts.inkHeightMm))} will show. To make that part ${formatLength(Number(facts.widthMm))} wide, print at --width ${Math.round(Number(facts.widthToFillMm) * 10) / 10}mm.`,
    stretched: ({ actual, facts }) =>
      `The art is stretched: its two scales differ by ${actual!.value.toFixed(1)} %. It prints ${size(facts)}. Give only --width or only --height to keep the proportions.`,
  },
});

/** Art that hangs over on one side only was moved there. */
function wayBack(facts: Finding['facts']): string {
  if (typeof facts.repeats === 'number')
    return `Once round the body, art of these proportions is higher than the blank: use --wrap repeat:${facts.repeats} or --wrap one-face, or art that is wider.`;
  const beyond = (side: string) => typeof facts[`${side}Mm`] === 'number';
  const moved = beyond('left') !== beyond('right') || beyond('top') !== beyond('bottom');
  return `${moved ? 'Move it with --offset, print' : 'Print'} it smaller, or, if the cut is meant, use --fit cover in place of a size.`;
}

function size(facts: Finding['facts']): string {
  return formatSize(Number(facts.widthMm), Number(facts.heightMm));
}

function findStretch({ contentBoxPx, turn, placementMm }: Job): Finding[] {
  // Not the effective ppi, which on a tapered body is that of its widest place.
  const turned = turnSize(contentBoxPx, turn);
  const [x, y] = [turned.width / placementMm.width, turned.height / placementMm.height];
  const percent = (Math.max(x, y) / Math.min(x, y) - 1) * 100;
  // Doubles may miss the limit by their last digits; scales exactly on it pass.
  if (percent <= STRETCH.value + 1e-9) return [];
  return [
    {
      code: 'stretched',
      severity: 'warning',
      actual: { value: percent, unit: 'percent' },
      expected: { max: STRETCH.value, unit: 'percent', from: STRETCH.from },
      facts: {
        widthMm: placementMm.width,
        heightMm: placementMm.height,
      },
    },
  ];
}

/** Nobody sees white on white: the part that shows is smaller than the size that was asked for. */
function findWhiteMargin(job: Job, inkBoxPx: RectPx | null): Finding[] {
  if (!job.blank.whiteBase || inkBoxPx === null) return [];
  const ink = rectToMm(frameOf(job), inkBoxPx);
  const { placementMm } = job;
  const margin = Math.max(placementMm.width - ink.width, placementMm.height - ink.height);
  if (margin <= WHITE_MARGIN.value + TOUCH_MM) return [];
  return [
    {
      code: 'white-margin',
      severity: 'advice',
      actual: { value: margin, unit: 'mm' },
      expected: { max: WHITE_MARGIN.value, unit: 'mm', from: WHITE_MARGIN.from },
      place: { px: inkBoxPx, mm: ink },
      facts: {
        widthMm: placementMm.width,
        heightMm: placementMm.height,
        inkWidthMm: ink.width,
        inkHeightMm: ink.height,
        widthToFillMm: placementMm.width ** 2 / ink.width,
      },
    },
  ];
}
