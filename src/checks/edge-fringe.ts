import { practiceLimit } from '../catalogue/practice.ts';
import { nameColour } from '../colour/name-colour.ts';
import { COARSEST_MM, findFringe } from '../faults/find-fringe.ts';
import { formatLength } from '../geometry/length.ts';
import type { RectPx } from '../geometry/rectangle.ts';
import { frameOf, rectToMm } from '../job/art-frame.ts';
import type { Job } from '../job/job.ts';
import { pixelAreaOf } from '../job/pixel-area.ts';
import { wholeOf } from '../raster/pad.ts';
import type { Raster } from '../raster/raster.ts';
import type { PrintPicture } from './define-check.ts';
import { type CheckResult, defineCheck } from './define-check.ts';
import { phrasePlace, placeInPicture } from './picture-place.ts';

const WIDTH = practiceLimit('fringe-width');
const SHARE = practiceLimit('fringe-share');

interface Inputs {
  readonly job: Job;
  readonly raster: Raster;
  /** null where only the art is at hand. */
  readonly picture: PrintPicture | null;
}

export default defineCheck<Inputs>({
  id: 'edge-fringe',
  title: 'Rim of the old background round a cut-out',
  reason:
    'A cut-out that keeps some of its old background in its soft edge prints with a light, dark or coloured rim; a light one shows as soon as the art stands over a colour.',
  source: [
    `a rim of at least ${WIDTH.value} mm, along ${SHARE.value} % of the edge (common practice, no source)`,
    'straight alpha: a pixel has its own colour, without the background (PNG, ISO/IEC 15948, from memory)',
    'told from outlines by fading, from glows by its width (own choice)',
  ],
  // Advice: how many of its alarms on real art are false stands in tests/rates/real.md.
  codes: { fringe: ['advice'] },
  needs: ({ artwork: { raster }, job, picture }) => {
    if (job === null) return { skip: 'nothing is visible, so there is no edge' };
    if (raster.hasAlpha && raster.model === 'cmyk') return { skip: 'edges in art of inks are not judged' };
    const pixelMm = Math.sqrt(pixelAreaOf(job));
    if (pixelMm > COARSEST_MM)
      return { skip: `pixels of ${formatLength(pixelMm)} are too coarse to tell a rim from a soft edge` };
    return { inputs: { job, raster, picture } };
  },
  run: judge,
  phrases: {
    fringe: ({ facts, place }) =>
      `A rim of ${facts.colour}, ${formatLength(Number(facts.widthMm))} wide, is left of the old background along ${Math.round(Number(facts.sharePercent))} % of the edge, for instance ${phrasePlace(place)}. Let the edge take its colour from within with --mend recolour-fringe, or cut the art out anew.`,
  },
});

/** Judged as it is printed where the art is finer than the print: what is finer is not seen, and would be searched in vain. */
function judge({ job, raster: artwork, picture }: Inputs): CheckResult {
  const isFiner = Math.min(job.effectivePpi.x, job.effectivePpi.y) > job.ppi;
  const printed = isFiner ? picture : null;
  const raster = printed?.raster ?? artwork;
  const fringe = printed
    ? findFringe(raster, wholeOf(raster), printed.pixelMm)
    : findFringe(raster, job.contentBoxPx, Math.sqrt(pixelAreaOf(job)));
  if (fringe === null) return { findings: [] };
  const [r, g, b] = fringe.background.map((sample) => Math.round(255 * sample)) as [number, number, number];
  const first = fringe.pixels.find(({ layer }) => layer < 0)!.pixel;
  const px: RectPx = {
    x: first % raster.widthPx,
    y: Math.floor(first / raster.widthPx),
    width: 1,
    height: 1,
  };
  return {
    findings: [
      {
        code: 'fringe',
        severity: 'advice',
        actual: { value: fringe.widthMm, unit: 'mm' },
        expected: { max: WIDTH.value, unit: 'mm', from: WIDTH.from },
        place: printed ? placeInPicture(printed, px, job, artwork) : { px, mm: rectToMm(frameOf(job), px) },
        facts: {
          widthMm: fringe.widthMm,
          sharePercent: 100 * fringe.share,
          colour: nameColour([r, g, b]),
        },
      },
    ],
  };
}
