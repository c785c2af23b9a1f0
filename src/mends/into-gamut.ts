import { gamutMapOf, gamutTableOf } from '../conditions/colour-tables.ts';
import type { Raster } from '../raster/raster.ts';
import type { MendContext, MendDefinition, MendedRaster } from './define-mend.ts';
import { mapColours } from './map-colours.ts';

export default {
  id: 'into-gamut',
  title: 'Bring colours inside what the printer can make',
  reason:
    'Moves each colour that the condition cannot make to the nearest of the same hue that it can, so that detail and hue stay where ink would lose them. Colours within the limit, gray art and what alpha hides stay as they are. Done in the art, and once more at the print size, where resampling has mixed colours.',
  source: [
    'clipping to the nearest colour of the same hue (CIE 156:2004)',
    'hue of Oklab (CSS Color 4, 9)',
    'the limit of the check of gamut, less 0.5 dE00 (own choice)',
  ],
  answers: ['gamut/out-of-gamut'],
  gentle: false,
  apply: (raster: Raster, context: MendContext): MendedRaster => ({ raster: bringInside(raster, context) }),
  // Where colours meet, resampling mixes them and overshoots.
  finish: bringInside,
} satisfies MendDefinition;

function bringInside(
  raster: Raster,
  { source, condition }: Pick<MendContext, 'source' | 'condition'>,
): Raster {
  if (raster.model !== 'rgb') return raster;
  const map = gamutMapOf(condition.profile, source);
  return map === null ? raster : mapColours(raster, gamutTableOf(condition.profile, source), map);
}
