import { practiceLimit } from '../catalogue/practice.ts';
import { lightnessTableOf } from '../conditions/colour-tables.ts';
import { DRIVER_CONVERSION } from '../conditions/printer-conversion.ts';
import { findMergedShadows } from '../faults/merged-shadows.ts';
import type { LightnessTable } from '../icc/lightness-table.ts';
import { pixelAreaOf } from '../job/pixel-area.ts';
import { findConnectedAreas } from '../raster/connected-areas.ts';
import type { Raster } from '../raster/raster.ts';
import type { MendContext, MendDefinition, MendedRaster } from './define-mend.ts';
import { lightenColours } from './lighten-colours.ts';

const LIMITS = {
  tone: practiceLimit('shadow-tone').value,
  detail: practiceLimit('shadow-detail').value,
  leastMm2: practiceLimit('shadow-merge-region').value,
  darkLightness: 0,
} as const;
/** Above the tone that merges, L*: rounding to 8 bits moves the darkest colours by less (derived: sRGB, 1/255 at black is 0.27). */
const ROUNDING = 0.5;
/** The curve ends at so many times the lightness of its foot: detail keeps two thirds of its contrast (own choice). */
const KNEE = 3;

export default {
  id: 'lift-shadows',
  title: 'Lift shadows above the printed black',
  reason: `Where the check of dark areas finds detail that prints as one black: takes L* 0 to the darkest tone that still differs from the printed black (the foot), and what is up to ${KNEE} times as light by a straight line from there to itself: L' = foot + L x (1 - 1 / ${KNEE}). Lighter colours and alpha stay. The whole of the art is lifted, so that equal colours stay equal; black lettering in it becomes as light as the printed black.`,
  source: [
    'CIE L* (CIE 15:2018)',
    `the limits of the check of dark areas; foot of ${LIMITS.tone + ROUNDING} L* above the printed black, knee at ${KNEE} times the foot (own choice)`,
  ],
  answers: ['dark-coverage/shadow-merge'],
  gentle: false,
  apply(raster: Raster, context: MendContext): MendedRaster {
    if (raster.model === 'cmyk') return { raster };
    const { source, condition, conversion } = context;
    const table = lightnessTableOf(condition.profile, source, conversion ?? DRIVER_CONVERSION);
    if (!isAtFault(raster, table, context)) return { raster };
    const foot = table.printedBlack + LIMITS.tone + ROUNDING;
    return { raster: lightenColours(raster, table, makeCurve(foot), KNEE * foot) };
  },
} satisfies MendDefinition;

/** L* to L*, both above the knee as they were. */
function makeCurve(foot: number): (lightness: number) => number {
  return (lightness) => Math.max(lightness, foot + lightness * (1 - 1 / KNEE));
}

function isAtFault(raster: Raster, table: LightnessTable, { job }: MendContext): boolean {
  const placed = job();
  if (placed === null) return false;
  const pixelMm2 = pixelAreaOf(placed);
  const { shadow } = findMergedShadows(raster, table, Math.sqrt(pixelMm2), LIMITS);
  const leastPixels = Math.max(1, Math.ceil(LIMITS.leastMm2 / pixelMm2 - 1e-6));
  return findConnectedAreas(shadow, raster.widthPx, leastPixels).length > 0;
}
