import type { FlatBox } from '../faults/flat-box.ts';
import { addAlpha } from '../raster/add-alpha.ts';
import { channelsOf, type Raster } from '../raster/raster.ts';
import { mendBoxes } from './box-at-fault.ts';
import type { MendDefinition } from './define-mend.ts';

export default {
  id: 'clear-box',
  title: 'Clear the flat box behind the subject',
  reason:
    'Makes the flat ground that the check of boxes finds fully clear. Only the ground that hangs together with the rim; the subject, and what it encloses, keep every pixel, so that a soft rim keeps a trace of the ground. The box of the art shrinks to the subject, which is sized and centred without it.',
  source: ['the limits of the check of boxes'],
  answers: ['near-white-box/near-white', 'near-white-box/flat-box'],
  gentle: false,
  apply: (raster, context) => ({ raster: mendBoxes(raster, context, clearBox) }),
} satisfies MendDefinition;

function clearBox(raster: Raster, { boxPx, mask }: FlatBox): Raster {
  const clear = addAlpha(raster);
  const data = clear.data.slice();
  const step = channelsOf(clear);
  for (let at = mask.indexOf(1); at !== -1; at = mask.indexOf(1, at + 1)) {
    const y = boxPx.y + Math.floor(at / boxPx.width);
    const pixel = (y * raster.widthPx + boxPx.x + (at % boxPx.width)) * step;
    data.fill(0, pixel, pixel + step);
  }
  return { ...clear, data };
}
