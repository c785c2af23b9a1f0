import { practiceLimit } from '../catalogue/practice.ts';
import { findToneBands, type ToneBands } from '../faults/tone-bands.ts';
import { formatArea } from '../geometry/area.ts';
import { formatLength } from '../geometry/length.ts';
import type { Job } from '../job/job.ts';
import { readLightnessLines } from '../raster/lightness-lines.ts';
import type { Raster } from '../raster/raster.ts';
import { type CheckResult, defineCheck, type PrintPicture } from './define-check.ts';
import { areaOfPixels, phrasePlace, placeInPicture } from './picture-place.ts';

const STEP = practiceLimit('visible-step');
const LENGTH = practiceLimit('band-length');
const AREA = practiceLimit('band-area');
/** Side of the cells that an area is counted in (own choice: two tones of the least length). */
const CELL_MM = 2;
/** From one tone to the next: what enlarging art of 100 ppi spreads a step over (own choice). */
const GAP_MM = 0.5;
/** Rows, and columns, that are looked at: two and more a cell on a blank of 38 cm (own choice). */
const MOST_LINES = 384;

interface Inputs {
  readonly job: Job;
  readonly picture: PrintPicture;
  readonly artwork: Raster;
}

export default defineCheck<Inputs>({
  id: 'banding',
  title: 'Gradients in steps',
  reason:
    'A gradient with too few tones for its length shows as stripes with edges; dye on a glossy coating makes them as clear as on a screen.',
  source: [
    `tones that differ by more than ${STEP.value} L* (CIE 15) and last longer than ${LENGTH.value} mm (common practice, no source)`,
    `five tones or more one after the other, on ${AREA.value} mm2 (own choice)`,
  ],
  // Advice: how many of its alarms on real art are false stands in tests/rates/real.md.
  // It does not see stripes that differ in hue only, nor any under grain.
  codes: { steps: ['advice'] },
  needs: ({ job, picture, artwork }) => {
    if (job === null || picture === null) return { skip: 'nothing is visible, so there is no gradient' };
    if (picture.raster.model === 'cmyk') return { skip: 'gradients in art of inks are not judged' };
    return { inputs: { job, picture, artwork: artwork.raster } };
  },
  run: judge,
  phrases: {
    steps: ({ actual, facts, place }) =>
      `A gradient goes in steps of ${actual!.value.toFixed(1)} L*, ${formatLength(Number(facts.bandMm))} wide each, on ${formatArea(Number(facts.areaMm2))}, about ${phrasePlace(place)}: they show as stripes. Draw the gradient anew with 8 bits a channel or more and a little noise, or ask for art that was not reduced to few colours.`,
  },
});

function judge({ job, picture, artwork }: Inputs): CheckResult {
  const { raster, pixelMm } = picture;
  const boxPx = { x: 0, y: 0, width: raster.widthPx, height: raster.heightPx };
  const cellPx = CELL_MM / pixelMm;
  const limits = { leastStep: STEP.value, leastFlatPx: LENGTH.value / pixelMm, mostGapPx: GAP_MM / pixelMm };
  const bands = findToneBands(
    readLightnessLines(raster, boxPx, 'x', MOST_LINES),
    readLightnessLines(raster, boxPx, 'y', MOST_LINES),
    limits,
    cellPx,
  ).filter(({ area }) => areaOf(picture, area.pixels) >= AREA.value);
  const [largest] = bands;
  if (largest === undefined) return { findings: [] };
  const areaMm2 = bands.reduce((sum, { area }) => sum + areaOf(picture, area.pixels), 0);
  return {
    findings: [
      {
        code: 'steps',
        severity: 'advice',
        actual: { value: largest.step, unit: 'L*' },
        expected: { max: STEP.value, unit: 'L*', from: STEP.from },
        place: placeInPicture(picture, boxOf(largest, cellPx, raster), job, artwork),
        facts: { bandMm: largest.bandPx * pixelMm, areaMm2, regions: bands.length },
      },
    ],
  };
}

function areaOf(picture: PrintPicture, cells: number): number {
  return areaOfPixels(picture, cells * (CELL_MM / picture.pixelMm) ** 2);
}

/** The cells of an area in pixels, the last of a row as far as the picture goes. */
function boxOf({ area: { boxPx } }: ToneBands, cellPx: number, { widthPx, heightPx }: Raster) {
  const [x, y] = [boxPx.x * cellPx, boxPx.y * cellPx];
  return {
    x,
    y,
    width: Math.min(widthPx, x + boxPx.width * cellPx) - x,
    height: Math.min(heightPx, y + boxPx.height * cellPx) - y,
  };
}
