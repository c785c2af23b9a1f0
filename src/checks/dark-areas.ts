import { practiceLimit } from '../catalogue/practice.ts';
import { lightnessTableOf } from '../conditions/colour-tables.ts';
import { DRIVER_CONVERSION } from '../conditions/printer-conversion.ts';
import { findMergedShadows, type MergedShadows } from '../faults/merged-shadows.ts';
import type { LightnessTable } from '../icc/lightness-table.ts';
import type { Raster } from '../raster/raster.ts';
import type { ColourInputs } from './colour-inputs.ts';

export const DARK_LIGHTNESS = practiceLimit('large-dark-lightness').value;
export const DETAIL = practiceLimit('shadow-detail').value;
export const MERGE_REGION = practiceLimit('shadow-merge-region');
const TONE = practiceLimit('shadow-tone').value;

/** What of a picture is dark, and what of its shadows is lost in the printed black. */
export interface DarkAreas extends MergedShadows {
  /** L* of it. */
  readonly printedBlack: number;
}

/** Measured once for each picture and way to the printer: the check judges it, and pictures of findings show it. */
const known = new WeakMap<Raster, WeakMap<LightnessTable, DarkAreas>>();

export function findDarkAreas(
  inputs: Pick<ColourInputs, 'picture' | 'source' | 'condition' | 'conversion'>,
): DarkAreas {
  const { picture, source, condition, conversion } = inputs;
  const table = lightnessTableOf(condition.profile, source, conversion ?? DRIVER_CONVERSION);
  const ofRaster = known.get(picture.raster) ?? new WeakMap<LightnessTable, DarkAreas>();
  known.set(picture.raster, ofRaster);
  const { printedBlack } = table;
  const areas = ofRaster.get(table) ?? {
    ...findMergedShadows(picture.raster, table, picture.pixelMm, {
      tone: TONE,
      detail: DETAIL,
      leastMm2: MERGE_REGION.value,
      darkLightness: DARK_LIGHTNESS,
    }),
    printedBlack,
  };
  ofRaster.set(table, areas);
  return areas;
}
