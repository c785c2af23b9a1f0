import { practiceLimit } from '../catalogue/practice.ts';
import { gamutTableOf } from '../conditions/colour-tables.ts';
import { formatArea } from '../geometry/area.ts';
import { findLargestArea } from '../raster/connected-areas.ts';
import { listColourChanges, nameKinds } from './colour-changes.ts';
import {
  type ColourInputs,
  conditionFacts,
  needsColours,
  phraseShare,
  phraseTrust,
  severityUnder,
} from './colour-inputs.ts';
import { type CheckResult, defineCheck } from './define-check.ts';
import type { Fact } from './finding.ts';
import { takeGamutCensus } from './gamut-census.ts';
import { areaOfPixels, phrasePlace, placeInPicture } from './picture-place.ts';

const SHARE = practiceLimit('gamut-share');
const REGION = practiceLimit('gamut-region');
/** Changes that the sentence tells; the facts have more. */
const TOLD = 3;

export default defineCheck<ColourInputs>({
  id: 'gamut',
  title: 'Colours that the printer can make',
  reason:
    'Colours more vivid than ink on the blank can be come out duller or shifted, and that is seen only when the press opens.',
  source: [
    'round trip through the printing condition, relative colorimetric (ICC.1:2022, 6.2) with black point compensation (ISO 18619), in CIEDE2000 (ISO/CIE 11664-6)',
    'limit: 3, or what the profile itself loses (measured)',
    `${SHARE.value} % of the art, or ${REGION.value} mm2 in one piece (common practice, no source)`,
  ],
  codes: { 'out-of-gamut': ['warning', 'advice'] },
  needs: needsColours,
  run: judge,
  phrases: {
    'out-of-gamut': ({ facts, place }) =>
      `${phraseShare(Number(facts.sharePercent))} of the visible art is in colours that "${facts.conditionName}" cannot make (${facts.kinds}); the largest piece has ${formatArea(Number(facts.largestMm2))}, about ${phrasePlace(place)}. Expect duller or shifted colours there${phraseChanges(facts.changes)}. Shift these colours towards what they become, with --mend into-gamut or by hand, or press a test swatch first.${phraseTrust(facts)}`,
  },
});

function judge({ picture, source, condition, job, artwork }: ColourInputs): CheckResult {
  const table = gamutTableOf(condition.profile, source);
  const { visiblePixels, overPixels, farPixels, mask, bins } = takeGamutCensus(picture.raster, table);
  const sharePercent = percent(overPixels, visiblePixels);
  const facts = {
    sharePercent,
    shareOver5Percent: percent(farPixels, visiblePixels),
    limitDeltaE: table.limit,
    noiseDeltaE: table.noise,
    ...conditionFacts(condition),
  };
  const isMuch = overPixels > 0 && sharePercent >= SHARE.value;
  // Regions are looked for only where one can be large enough.
  if (!isMuch && areaOfPixels(picture, overPixels) < REGION.value) return { findings: [], facts };
  const largest = findLargestArea(mask, picture.raster.widthPx)!;
  const largestMm2 = areaOfPixels(picture, largest.pixels);
  if (!isMuch && largestMm2 < REGION.value) return { findings: [], facts: { ...facts, largestMm2 } };
  return {
    findings: [
      {
        code: 'out-of-gamut',
        severity: severityUnder(condition),
        ...(isMuch
          ? {
              actual: { value: sharePercent, unit: 'percent' },
              expected: { max: SHARE.value, unit: 'percent', from: SHARE.from },
            }
          : {
              actual: { value: largestMm2, unit: 'mm2' },
              expected: { max: REGION.value, unit: 'mm2', from: REGION.from },
            }),
        place: placeInPicture(picture, largest.boxPx, job, artwork),
        facts: {
          ...facts,
          largestMm2,
          kinds: nameKinds(bins, table),
          changes: listColourChanges(bins, table, visiblePixels),
        },
      },
    ],
  };
}

function percent(part: number, whole: number): number {
  return whole === 0 ? 0 : (part / whole) * 100;
}

/** `: #00ff00 (bright green) becomes #5fb445 (green), …` */
function phraseChanges(changes: Fact | undefined): string {
  if (!Array.isArray(changes) || changes.length === 0) return '';
  const told = changes
    .slice(0, TOLD)
    .map(
      ({ colour, name, becomes, becomesName }) =>
        `${colour} (${name}) becomes about ${becomes} (${becomesName})`,
    );
  return `: ${told.join(', ')}`;
}
