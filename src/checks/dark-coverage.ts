import { practiceLimit } from '../catalogue/practice.ts';
import { DRIVER_CONVERSION, type PrinterConversion } from '../conditions/printer-conversion.ts';
import { TILE_MM } from '../faults/merged-shadows.ts';
import { formatArea } from '../geometry/area.ts';
import { type ConnectedArea, findConnectedAreas } from '../raster/connected-areas.ts';
import {
  type ColourInputs,
  conditionFacts,
  needsColours,
  phraseShare,
  phraseTrust,
  severityUnder,
} from './colour-inputs.ts';
import { DARK_LIGHTNESS, type DarkAreas, DETAIL, findDarkAreas, MERGE_REGION } from './dark-areas.ts';
import { type CheckResult, defineCheck } from './define-check.ts';
import type { Finding } from './finding.ts';
import { areaOfPixels, phrasePlace, placeInPicture } from './picture-place.ts';

const DARK_AREA = practiceLimit('large-dark-area');

export default defineCheck<ColourInputs>({
  id: 'dark-coverage',
  title: 'Shadows and large dark areas',
  reason:
    'Tones darker than the printed black run together; large dark areas carry much dye, which dries slowly and shows every fault of the press.',
  source: [
    'the conversion that will be made: by --printer-profile as asked for (ICC.1:2022, 6.2; ISO 18619), else by the driver, relative colorimetric without black point compensation (common practice, no source)',
    `${MERGE_REGION.value} mm2 with detail of ${DETAIL} L* within ${3 * TILE_MM} mm; ${DARK_AREA.value / 100} cm2 below L* ${DARK_LIGHTNESS} (common practice, no source)`,
  ],
  codes: { 'shadow-merge': ['warning', 'advice'], 'large-dark': ['advice'] },
  needs: needsColours,
  run: judge,
  phrases: {
    'shadow-merge': ({ facts, place }) =>
      `${phraseShare(Number(facts.sharePercent))} of the visible art is shadow detail that "${facts.conditionName}" prints as one black; the largest piece has ${formatArea(Number(facts.largestMm2))}, about ${phrasePlace(place)}. Lighten these shadows, with --mend lift-shadows or by hand${facts.compensated === true ? '' : ', or let the conversion compensate the black point'}.${phraseTrust(facts)}`,
    'large-dark': ({ facts, place }) =>
      `A dark area of ${formatArea(Number(facts.largestMm2))} in one piece (below L* ${facts.limitLightness}), about ${phrasePlace(place)}, carries much dye. Let the transfer dry well, and look for marks of feeding and for ghosting on a first piece.`,
  },
});

function judge(inputs: ColourInputs): CheckResult {
  const areas = findDarkAreas(inputs);
  return { findings: [...findShadowMerge(inputs, areas), ...findLargeDark(inputs, areas)] };
}

function findShadowMerge(
  inputs: ColourInputs,
  { shadow, mergedPixels, visiblePixels, printedBlack }: DarkAreas,
): Finding[] {
  return findRegion(inputs, shadow, mergedPixels, MERGE_REGION, (areas, largestMm2) => ({
    code: 'shadow-merge',
    severity: severityUnder(inputs.condition),
    facts: {
      sharePercent: (mergedPixels / visiblePixels) * 100,
      largestMm2,
      regions: areas.length,
      printedBlackLightness: printedBlack,
      conversion: tellConversion(inputs.conversion),
      compensated: isCompensated(inputs.conversion),
      ...conditionFacts(inputs.condition),
    },
  }));
}

function isCompensated(conversion: PrinterConversion | null): boolean {
  return conversion?.blackPointCompensation === true && conversion.intent !== 'absolute';
}

function tellConversion(conversion: PrinterConversion | null): string {
  const { intent } = conversion ?? DRIVER_CONVERSION;
  const how = intent === 'relative' || intent === 'absolute' ? `${intent} colorimetric` : intent;
  return `${how} ${isCompensated(conversion) ? 'with' : 'without'} black point compensation, by ${conversion ? 'the print-ready file' : 'the driver'}`;
}

function findLargeDark(inputs: ColourInputs, { dark, darkPixels, visiblePixels }: DarkAreas): Finding[] {
  return findRegion(inputs, dark, darkPixels, DARK_AREA, (areas, largestMm2) => ({
    code: 'large-dark',
    severity: 'advice',
    facts: {
      sharePercent: (darkPixels / visiblePixels) * 100,
      largestMm2,
      regions: areas.length,
      limitLightness: DARK_LIGHTNESS,
    },
  }));
}

/** The finding about the connected regions that have at least the limit's size; none where there are none. */
function findRegion(
  { picture, job, artwork }: ColourInputs,
  mask: Uint8Array,
  marked: number,
  limit: { readonly value: number; readonly from: string },
  describe: (areas: readonly ConnectedArea[], largestMm2: number) => Finding,
): Finding[] {
  if (areaOfPixels(picture, marked) < limit.value) return [];
  const leastPixels = Math.max(1, Math.floor(limit.value / picture.pixelMm ** 2) - 1);
  const areas = findConnectedAreas(mask, picture.raster.widthPx, leastPixels).filter(
    ({ pixels }) => areaOfPixels(picture, pixels) >= limit.value,
  );
  const largest = areas[0];
  if (!largest) return [];
  const largestMm2 = areaOfPixels(picture, largest.pixels);
  return [
    {
      ...describe(areas, largestMm2),
      actual: { value: largestMm2, unit: 'mm2' },
      expected: { max: limit.value, unit: 'mm2', from: limit.from },
      place: placeInPicture(picture, largest.boxPx, job, artwork),
    },
  ];
}
