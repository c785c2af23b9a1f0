import { gamutMapOf, gamutTableOf } from '../conditions/colour-tables.ts';
import type { MendDefinition } from './define-mend.ts';
import { mapColours } from './map-colours.ts';

export default {
  id: 'into-gamut',
  title: 'Bring colours inside what the printer can make',
  reason:
    'Moves each colour that the condition cannot make to the nearest of the same hue that it can, so that detail and hue stay where ink would lose them. Colours within the limit, gray art and what alpha hides stay as they are.',
  source: [
    'clipping to the nearest colour of the same hue (CIE 156:2004)',
    'hue of Oklab (CSS Color 4, 9)',
    'the limit of the check of gamut, less 0.5 dE00 (own choice)',
  ],
  answers: ['gamut/out-of-gamut'],
  gentle: false,
  apply(raster, { source, condition }) {
    if (raster.model !== 'rgb') return raster;
    const map = gamutMapOf(condition.profile, source);
    return map === null ? raster : mapColours(raster, gamutTableOf(condition.profile, source), map);
  },
} satisfies MendDefinition;
