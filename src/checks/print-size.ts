import { practiceLimit } from '../catalogue/practice.ts';
import { formatLength, formatSize, MM_PER_INCH } from '../geometry/length.ts';
import type { PointPx, RectMm, RectPx } from '../geometry/rectangle.ts';
import type { Shape } from '../geometry/shape.ts';
import { distanceInside } from '../geometry/signed-distance.ts';
import { frameOf, rectToMm, turnSize } from '../job/art-frame.ts';
import type { Job } from '../job/job.ts';
import { bleedBoxOf, marginWithinBleed, TOUCH_MM } from '../job/lines.ts';
import { defineCheck } from './define-check.ts';
import type { Finding } from './finding.ts';
import { phraseSides, type Side, sideOf, worstPerSide } from './sides.ts';
import { findTooFineArt, phraseTooFine } from './too-fine-art.ts';
import { placingForRound } from './wrap-remedy.ts';

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
      ...findCut(job, rimPx, overhangMm),
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

/** A bleed that was made for this blank is made of whole pixels: the diagonal of one may hang over the line. */
function allowedOverhang({ effectivePpi }: Job, mends: readonly string[] = []): number {
  const { x, y } = effectivePpi;
  return mends.includes('extend-edges') ? MM_PER_INCH * Math.hypot(1 / x, 1 / y) + TOUCH_MM : TOUCH_MM;
}

function findCut(job: Job, rimPx: readonly PointPx[], overhangMm: number): Finding[] {
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
